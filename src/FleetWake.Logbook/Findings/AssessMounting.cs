using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses one mounting: its trials, a straight-line drift, its margin and its band exit.</summary>
internal static class AssessMounting
{
    public static MountingFinding Of(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter)
    {
        var steps = MountingSteps.Of(history, mounting);
        var breaks = steps.Where(s => s.NewBaseline).Select(s => s.Entry).ToList();
        var trials = OfOneKind(Trials(history, mounting, engine, meter, breaks));
        var drift = StraightDrift.Of(trials, engine?.TachometerStepRpm);
        var band = Banding.Standing(trials, engine, drift);
        var exit = Banding.Exit(trials, engine, drift, band, breaks.Count);
        return new MountingFinding(
            mounting.Id,
            Card(history, mounting),
            mounting.Fitted.Entry.Date(),
            meter?.At(mounting.Fitted.Entry)?.Hours,
            trials,
            [.. steps.Select(s => new HistoryMark(s.Kind, s.Entry.Date(), meter?.At(s.Entry)?.Hours, s.Label))],
            trials.FirstOrDefault(t => t.SetAside is null && t.Stretch == breaks.Count)?.Rpm,
            drift?.DriftPer100Hours,
            drift is null ? null : Banding.Line(drift, exit, goesOn: drift.Fit.LastStretch == breaks.Count && exit.State != BandExitState.AlreadyOutside),
            band,
            exit,
            Causes.Of(band, trials))
        {
            Found = mounting.Found,
            LeastDriftShown = drift?.LeastShown,
        };
    }

    private static List<TrialFinding> Trials(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter, List<Entry> breaks)
    {
        var (position, prop) = (mounting.Fitted.Position, mounting.Fitted.Prop);
        TrialFinding? Assessed(IFact fact) => fact switch
        {
            TrialRun trial => AssessTrial.At(
                position, trial, engine, meter, history.PitchInchesAt(prop, trial.Entry), StretchOf(history, breaks, trial.Entry), history.Believed.Contains(trial.Entry.Id)),
            NormalisedRpmRead read when read.Position == position =>
                AssessTrial.Of(read, engine, meter, StretchOf(history, breaks, read.Entry), history.Believed.Contains(read.Entry.Id)),
            _ => null,
        };
        return [.. history.Facts.Where(f => mounting.Holds(f.Entry)).Select(Assessed).OfType<TrialFinding>()];
    }

    /// <summary>
    /// A reading as read and one at reference conditions differ by weather and load, which a line through both would
    /// take for drift: those of which there are more count, the ones as read where there are as many.
    /// </summary>
    private static List<TrialFinding> OfOneKind(List<TrialFinding> trials)
    {
        static bool Usable(TrialFinding trial) => trial is { SetAside: null, Hours: not null };
        var normalised = trials.Count(t => Usable(t) && t.Normalised) > trials.Count(t => Usable(t) && !t.Normalised);
        return [.. trials.Select(t => Usable(t) && t.Normalised != normalised ? t with { SetAside = SetAsideReason.OtherConditions } : t)];
    }

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
}
