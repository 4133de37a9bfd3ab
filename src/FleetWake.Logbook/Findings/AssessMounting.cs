using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses one mounting: its trials, a straight-line drift, its margin and its band exit.</summary>
internal static class AssessMounting
{
    public static MountingFinding Of(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter)
    {
        var steps = MountingSteps.Of(history, mounting);
        var breaks = steps.Where(s => s.NewBaseline).Select(s => s.Entry).ToList();
        var worked = Trials(history, mounting, engine, meter, breaks);
        var read = worked.ConvertAll(w => w.Trial);
        var atReference = MostAtReference(read);
        var trials = OfOneKind(read, atReference);
        var drift = StraightDrift.Of(trials, atReference, engine?.TachometerStepRpm);
        var band = Banding.Standing(trials, engine, drift);
        var exit = Banding.Exit(trials, engine, drift, band, breaks.Count);
        var prop = Card(history, mounting);
        return new MountingFinding(
            mounting.Id,
            prop,
            mounting.Fitted.Entry.Date(),
            meter?.At(mounting.Fitted.Entry)?.Hours,
            trials,
            [.. steps.Select(s => new HistoryMark(s.Kind, s.Entry.Date(), meter?.At(s.Entry)?.Hours, s.Label))],
            trials.FirstOrDefault(t => t.SetAside is null && t.Stretch == breaks.Count)?.LineRpm(atReference),
            drift?.DriftPer100Hours,
            drift is null ? null : Banding.Line(drift, exit, goesOn: drift.Fit.LastStretch == breaks.Count && exit.State != BandExitState.AlreadyOutside),
            band,
            exit,
            Causes.Of(band, trials))
        {
            Found = mounting.Found,
            AtReference = atReference,
            PointsTo = PointsTo.Of(Comparable(worked, breaks.Count), engine, prop),
            LeastDriftShown = drift?.LeastShown,
        };
    }

    private static List<Worked> Trials(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter, List<Entry> breaks)
    {
        var (position, prop) = (mounting.Fitted.Position, mounting.Fitted.Prop);
        var gauges = engine is null ? [] : GaugeErrors.Of(history, engine.Engine);
        var baselines = new Dictionary<int, TrialConditions>();
        Worked? Run(TrialRun trial)
        {
            var stretch = StretchOf(history, breaks, trial.Entry);
            var found = AssessTrial.At(
                position,
                trial,
                engine,
                GaugeErrors.At(gauges, history.Order, trial.Entry),
                meter,
                history.PitchInchesAt(prop, trial.Entry),
                baselines.GetValueOrDefault(stretch),
                stretch,
                history.Believed.Contains(trial.Entry.Id));
            // The first trial that counts is the baseline that later ones are held against.
            if (found is { Trial.SetAside: null or SetAsideReason.HoursUnknown }) baselines.TryAdd(stretch, TrialReadings.Conditions(trial));
            return found;
        }

        Worked? Assessed(IFact fact) => fact switch
        {
            TrialRun trial => Run(trial),
            NormalisedRpmRead read when read.Position == position =>
                new Worked(AssessTrial.Of(read, engine, meter, StretchOf(history, breaks, read.Entry), history.Believed.Contains(read.Entry.Id)), null, false, null),
            _ => null,
        };
        return [.. history.Facts.Where(f => mounting.Holds(f.Entry)).Select(Assessed).OfType<Worked>()];
    }

    /// <summary>Trials of a stretch that can be held against each other; hours are not needed for that.</summary>
    private static List<Worked> Comparable(List<Worked> worked, int stretch) =>
        worked.FindAll(w => w is { Corrected: not null, Trial.SetAside: null or SetAsideReason.HoursUnknown } && w.Trial.Stretch == stretch);

    private static bool Usable(TrialFinding trial) => trial is { SetAside: null, Hours: not null };

    /// <summary>
    /// A reading as read and one at reference conditions differ by weather, which a line through both would take for drift. The
    /// line is one of readings at reference conditions when most of the trials could be brought there.
    /// </summary>
    private static bool MostAtReference(List<TrialFinding> trials)
    {
        var usable = trials.Where(Usable).ToList();
        return 2 * usable.Count(t => t.Reference is not null) > usable.Count;
    }

    private static List<TrialFinding> OfOneKind(List<TrialFinding> trials, bool atReference) =>
    [
        .. trials.Select(t => Usable(t) && (atReference ? t.Reference is null : t.Normalised) ? t with { SetAside = SetAsideReason.OtherConditions } : t),
    ];

    private static int StretchOf(BoatHistory history, List<Entry> breaks, Entry entry) => breaks.Count(b => history.Order.Compare(b, entry) <= 0);

    private static PropCard Card(BoatHistory history, MountingSpan mounting)
    {
        var facts = history.Props.GetValueOrDefault(mounting.Fitted.Prop) ?? [];
        var registered = history.PropOf(mounting);
        var numbers = PropNumbers.Of(facts);
        return new PropCard(
            mounting.Fitted.Prop,
            numbers.DiameterInches,
            numbers.PitchInches,
            registered?.Blades,
            registered?.Material);
    }

    /// <summary>A trial, the numbers behind it where it was run here, whether somebody said of each run if the prop drew air, and the pitch then [in].</summary>
    internal sealed record Worked(TrialFinding Trial, CorrectedTrial? Corrected, bool Watched, double? PitchInches);
}
