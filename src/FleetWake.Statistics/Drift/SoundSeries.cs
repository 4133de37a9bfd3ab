namespace FleetWake.Statistics.Drift;

/// <summary>A series that arithmetic can be done on: in order, finite, hours that never fall, a band the right way up.</summary>
internal sealed class SoundSeries
{
    private readonly (double Week, StepKind Kind, int Place)[] _events;

    private SoundSeries(DriftTrial[] trials, (double Week, StepKind Kind, int Place)[] events) => (Trials, _events) = (trials, events);

    public DriftTrial[] Trials { get; }

    /// <summary>The place of each of them in the series as it was given.</summary>
    public int[] Places { get; private init; } = [];

    public double MinRpm { get; private init; }

    public double MaxRpm { get; private init; }

    public bool HasBand { get; private init; }

    /// <summary>The RPM were never brought to one load.</summary>
    public bool LoadUncorrected { get; private init; }

    /// <summary>Hours went back somewhere: the highest reading so far was taken in place of each lower one.</summary>
    public bool HoursFell { get; private init; }

    public static SoundSeries Of(DriftSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        var kept = new List<int>(series.Trials.Count);
        for (var i = 0; i < series.Trials.Count; i++)
        {
            var t = series.Trials[i];
            if (double.IsFinite(t.Week) && Math.Abs(t.EngineHours) < 1e7 && t.Rpm is > 0 and < 1e6 && !(OwnSd(t) > t.Rpm)) kept.Add(i);
        }

        // The RPM is the last word, so that the order of the input never shows in the result.
        var places = kept.OrderBy(i => series.Trials[i].Week).ThenBy(i => series.Trials[i].EngineHours).ThenBy(i => series.Trials[i].Rpm).ToArray();
        var trials = Array.ConvertAll(places, i => series.Trials[i] with { OwnSdRpm = OwnSd(series.Trials[i]) });
        var fell = false;
        for (var i = 1; i < trials.Length; i++)
        {
            if (trials[i].EngineHours >= trials[i - 1].EngineHours) continue;
            fell = true;
            trials[i] = trials[i] with { EngineHours = trials[i - 1].EngineHours };
        }

        var (low, high) = (Math.Min(series.RatedMinRpm, series.RatedMaxRpm), Math.Max(series.RatedMinRpm, series.RatedMaxRpm));
        var events = series.Events.Select((e, place) => (e.Week, e.Kind, place)).Where(e => e.Kind != StepKind.None && double.IsFinite(e.Week)).OrderBy(e => e.Week).ToArray();
        return new(trials, events) { Places = places, MinRpm = low, MaxRpm = high, HasBand = low > 0 && high < 1e6, HoursFell = fell, LoadUncorrected = series.LoadUncorrected };
    }

    /// <summary>
    /// The steps that part the first <paramref name="count"/> trials. Events between the same two trials are one step: only
    /// their sum can be seen. An event before the first trial belongs to the level, one after the last has shown nothing yet.
    /// </summary>
    public List<Step> StepsBetween(int count, DriftSettings settings)
    {
        var steps = new List<Step>();
        for (var after = 1; after < count; after++)
        {
            // A trial in the very moment of an event counts as before it.
            if (Between(Trials[after - 1].Week, Trials[after].Week, after, settings) is { } step) steps.Add(step);
        }

        return steps;
    }

    /// <summary>What the events since the last trial may do to the level; null when there are none.</summary>
    public Step? StepSinceLast(DriftSettings settings) =>
        Between(Trials.Length > 0 ? Trials[^1].Week : double.NegativeInfinity, double.PositiveInfinity, Trials.Length, settings);

    private Step? Between(double from, double before, int after, DriftSettings settings)
    {
        double mean = 0, variance = 0;
        List<int>? events = null;
        foreach (var (week, kind, place) in _events)
        {
            if (week < from || week >= before) continue;
            var strike = kind == StepKind.Strike;
            mean += strike ? settings.StrikeMeanRpm : 0;
            variance += strike ? settings.StrikeSdRpm * settings.StrikeSdRpm : settings.RepitchSdRpm * settings.RepitchSdRpm;
            (events ??= []).Add(place);
        }

        return variance > 0 ? new(after, mean, variance, events!) : null;
    }

    private static double OwnSd(in DriftTrial t) => double.IsFinite(t.OwnSdRpm) ? Math.Max(0, t.OwnSdRpm) : 0;

    /// <param name="FirstAfter">The first trial after it.</param>
    /// <param name="Mean">What it is expected to do [rpm].</param>
    /// <param name="Variance">Variance of that [rpm^2].</param>
    /// <param name="Events">Its events' places in the series as given, in the order of time.</param>
    public readonly record struct Step(int FirstAfter, double Mean, double Variance, IReadOnlyList<int> Events);
}
