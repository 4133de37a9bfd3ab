using FleetWake.Logbook.Findings;
using FleetWake.Statistics;
using FleetWake.Statistics.Charts;

namespace FleetWake.Reports.Pictures;

/// <summary>Self-starting CUSUM pictures (Hawkins 1987, see <see cref="SelfStartingCusum"/>).</summary>
public static class CusumPictures
{
    /// <summary>
    /// Allowance, clip and limit [standard deviations], chosen on simulated fleets. Run lengths of tables hold for evenly spaced
    /// readings of a known scatter, which trials are not, and are no rate of false alarms of ours.
    /// </summary>
    public const double Allowance = 0.25;

    /// <summary>A single score counts as no more than this: see <see cref="Allowance"/>.</summary>
    public const double Clip = 2.5;

    /// <summary>The line: see <see cref="Allowance"/>.</summary>
    public const double Limit = 3.6;

    /// <summary>Step of a tachometer that nobody described [RPM]. Common practice, no source.</summary>
    public const double UnknownStepRpm = 50;

    private const string Means =
        "each trial adds how far it lies above (or below) the mean of those before it, less an allowance; when a sum passes the line the level has moved";

    /// <summary>The picture of a position; null without a usable trial.</summary>
    /// <param name="finding">The boat's finding.</param>
    /// <param name="position">The position.</param>
    public static CusumPicture? Of(BoatFinding finding, PositionFinding position)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(position);
        if (position.Mounting is not { } mounting) return null;
        var usable = mounting.Trials.Where(t => t is { SetAside: null, Hours: not null }).ToList();
        if (usable.Count == 0) return null;
        return Of(
            new(finding.Boat, position.Position, Phrases.Title(finding, position), Phrases.Name(finding, position)),
            [.. usable.Select(t => new CusumTrial($"{t.On:yyyy-MM-dd}", t.LineRpm(mounting.AtReference), t.Stretch, t.Entry == mounting.Watch?.RaisedAt))],
            [.. usable.Index().Skip(1).Where(t => t.Item.Stretch != usable[t.Index - 1].Stretch).Select(t => Restart(mounting, t.Index, usable[t.Index - 1].On, t.Item.On))],
            GaugeStep.StandardUncertainty(position.Engine?.TachometerStepRpm is > 0 and < 1000 and { } step ? step : UnknownStepRpm),
            Judged(mounting.Watch),
            mounting.Trials.Max(t => t.Stretch) > usable[^1].Stretch);
    }

    /// <summary>The picture of trials in order.</summary>
    /// <param name="subject">What it is of; its statement is how the sentence names it.</param>
    /// <param name="trials">The usable trials, one at least.</param>
    /// <param name="restarts">What began the stretches.</param>
    /// <param name="noiseFloor">Least scatter that its gauge can have [RPM]; zero or more.</param>
    /// <param name="judged">What judges the alarm, as a sentence.</param>
    /// <param name="noneSince">A new baseline began after the last of them.</param>
    public static CusumPicture Of(
        PictureSubject subject, IReadOnlyList<CusumTrial> trials, IReadOnlyList<CusumRestart> restarts, double noiseFloor, string judged, bool noneSince = false)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(trials);
        var run = SelfStartingCusum.Run([.. trials.Select(t => new ChartReading(t.Rpm, t.Stretch))], Allowance, Limit, Clip, noiseFloor);
        List<CusumPoint> points = [.. trials.Zip(run, (t, p) => new CusumPoint(t.When, p.Score is null ? null : p.Sums.Upper, p.Score is null ? null : p.Sums.Lower, t.Alarm))];
        var said = $"{subject.Statement}: {Means}. {Now(trials, points, noneSince)} {judged}";
        return new CusumPicture(subject.Boat, subject.Position, subject.Title, said, Limit, points, restarts);
    }

    /// <summary>What judges the alarm, as a sentence: the picture does not.</summary>
    /// <param name="watch">The evidence; null with fewer than two usable trials.</param>
    public static string Judged(DriftWatch? watch) => watch is null
        ? "The alarm itself is judged by the evidence, which takes two trials."
        : $"The alarm itself is judged by the evidence ({watch.EvidenceInWords()} to one now, {watch.AlarmAtToOne:0.#} to one raises it; {Phrases.FalseAlarms(watch)}).";

    private static string Now(IReadOnlyList<CusumTrial> trials, List<CusumPoint> points, bool noneSince)
    {
        if (noneSince) return "There is no trial since the last new baseline: the sums begin anew.";
        var since = trials.Count(t => t.Stretch == trials[^1].Stretch);
        var begun = trials[0].Stretch == trials[^1].Stretch ? "the beginning" : "the last new baseline";
        if (points[^1] is not { Above: { } above, Below: { } below }) return $"There {(since == 1 ? "is 1 trial" : $"are {since} trials")} since {begun}: fewer than three say nothing here.";
        var (way, sum) = above >= below ? ("upper", above) : ("lower", below);
        if (sum == 0) return $"Both sums stand at 0 after {since} trials since {begun}.";
        var passed = sum > Limit ? $"past the line at {Limit:0.0} since {Since(trials, points, way == "upper")}: the level has {(way == "upper" ? "risen" : "fallen")}" : $"short of the line at {Limit:0.0}";
        return $"The {way} sum stands at {sum:0.0}, {passed}.";
    }

    private static string Since(IReadOnlyList<CusumTrial> trials, List<CusumPoint> points, bool upper)
    {
        var at = points.Count - 1;
        while (at > 0 && trials[at - 1].Stretch == trials[^1].Stretch && (upper ? points[at - 1].Above : points[at - 1].Below) > Limit) at--;
        return points[at].When;
    }

    // The finding does not say which mark began the stretch: those that can, between the two trials.
    private static CusumRestart Restart(MountingFinding mounting, int trial, DateOnly after, DateOnly until)
    {
        var marks = mounting.Marks.Where(m => m.On >= after && m.On <= until && m.Kind is not (HistoryMarkKind.Inspection or HistoryMarkKind.HourMeter or HistoryMarkKind.Fitted)).ToList();
        return marks.Count == 0
            ? new CusumRestart(trial, HistoryMarkKind.OtherProp, "new baseline")
            : new CusumRestart(trial, marks.Select(m => m.Kind).Aggregate(DriftPictures.Graver), string.Join(" + ", marks.Select(m => m.Label).Distinct()));
    }
}
