using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses one mounting: its trials, a straight-line drift, its margin and its band exit.</summary>
internal static class AssessMounting
{
    public static MountingFinding Of(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter)
    {
        var breaks = NewBaselines(history, mounting);
        var trials = Trials(history, mounting, engine, meter, breaks);
        var drift = StraightDrift.Of(trials, engine?.TachometerStepRpm);
        var band = Banding.Standing(trials, engine, drift);
        var exit = Banding.Exit(trials, engine, drift, band, breaks.Count);
        return new MountingFinding(
            mounting.Id,
            Card(history, mounting),
            mounting.Fitted.Entry.Date(),
            meter?.At(mounting.Fitted.Entry)?.Hours,
            trials,
            Marks(history, mounting, meter),
            trials.FirstOrDefault(t => t.SetAside is null && t.Stretch == breaks.Count)?.Rpm,
            drift?.DriftPer100Hours,
            drift is null ? null : Banding.Line(drift, exit, goesOn: drift.Fit.LastStretch == breaks.Count && exit.State != BandExitState.AlreadyOutside),
            band,
            exit,
            Causes.Of(band, trials));
    }

    private static List<TrialFinding> Trials(BoatHistory history, MountingSpan mounting, EngineCard? engine, MeterChain? meter, List<Entry> breaks)
    {
        var (position, prop) = (mounting.Fitted.Position, mounting.Fitted.Prop);
        TrialFinding? Assessed(IFact fact) => fact switch
        {
            TrialRun trial => AssessTrial.At(position, trial, engine, meter, history.PitchInchesAt(prop, trial.Entry), StretchOf(history, breaks, trial.Entry)),
            NormalisedRpmRead read when read.Position == position => AssessTrial.Of(read, engine, meter, StretchOf(history, breaks, read.Entry)),
            _ => null,
        };
        return [.. history.Facts.Where(f => mounting.Holds(f.Entry)).Select(Assessed).OfType<TrialFinding>()];
    }

    /// <summary>Entries during the mounting that begin a new baseline: a strike that left a mark, and a repitch.</summary>
    private static List<Entry> NewBaselines(BoatHistory history, MountingSpan mounting) =>
    [
        .. history.Strikes.Where(s => s.Position == mounting.Fitted.Position && s.Severity != StrikeSeverity.NoMark).Select(s => s.Entry)
            .Concat(Repitches(history, mounting).Select(r => r.Entry))
            .Where(mounting.Holds)
            .Order(history.Order),
    ];

    private static int StretchOf(BoatHistory history, List<Entry> breaks, Entry entry) => breaks.Count(b => history.Order.Compare(b, entry) <= 0);

    private static IEnumerable<Repitched> Repitches(BoatHistory history, MountingSpan mounting) =>
        history.Props.TryGetValue(mounting.Fitted.Prop, out var facts) ? facts.OfType<Repitched>() : [];

    private static PropCard Card(BoatHistory history, MountingSpan mounting)
    {
        var facts = history.Props.GetValueOrDefault(mounting.Fitted.Prop) ?? [];
        var registered = facts.OfType<PropRegistered>().FirstOrDefault();
        var numbers = PropNumbers.Of(facts);
        return new PropCard(
            mounting.Fitted.Prop,
            numbers.DiameterInches,
            numbers.PitchInches,
            registered?.Blades,
            registered?.Material);
    }

    private static List<HistoryMark> Marks(BoatHistory history, MountingSpan mounting, MeterChain? meter)
    {
        HistoryMark Mark(HistoryMarkKind kind, Entry entry, string label) => new(kind, entry.Date(), meter?.At(entry)?.Hours, label);

        var position = mounting.Fitted.Position;
        return
        [
            .. history.Strikes.Where(s => s.Position == position).Select(s => (s.Entry, Mark: Mark(HistoryMarkKind.Strike, s.Entry, $"strike, {Words.Prose(s.Severity)}")))
                .Concat(history.Inspections.Where(i => i.Position == position).Select(i => (i.Entry, Mark: Mark(HistoryMarkKind.Inspection, i.Entry, $"inspected: {Words.Prose(i.Verdict)}"))))
                .Concat(Repitches(history, mounting).Select(r => (r.Entry, Mark: Mark(HistoryMarkKind.Repitch, r.Entry, $"repitched to {r.PitchAfterInches:0.##} in"))))
                .Append((mounting.Fitted.Entry, Mark: Mark(HistoryMarkKind.Fitted, mounting.Fitted.Entry, $"{mounting.Fitted.Prop} fitted")))
                .Where(m => mounting.Holds(m.Entry))
                .OrderBy(m => m.Entry, history.Order)
                .Select(m => m.Mark),
        ];
    }
}
