using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>Something that happened during a mounting.</summary>
/// <param name="Entry">The entry it came with.</param>
/// <param name="Kind">What.</param>
/// <param name="Label">Short label for people.</param>
/// <param name="NewBaseline">What trials showed before no longer stands for it.</param>
internal sealed record MountingStep(Entry Entry, HistoryMarkKind Kind, string Label, bool NewBaseline = true);

/// <summary>What happened during a mounting besides its trials, and which of it begins a new baseline. That list is common practice, no source.</summary>
internal static class MountingSteps
{
    /// <summary>Every step of a mounting, in order.</summary>
    public static IReadOnlyList<MountingStep> Of(BoatHistory history, MountingSpan mounting)
    {
        var fitted = mounting.Fitted;
        var begun = new MountingStep(
            fitted.Entry, HistoryMarkKind.Fitted, mounting.Found ? $"{(mounting.PropKnown() ? fitted.Prop : "a prop")} found fitted" : $"{fitted.Prop} fitted", NewBaseline: false);
        return
        [
            .. history.Facts.Select(f => OnBoat(f, fitted.Position))
                .Concat((history.Props.GetValueOrDefault(fitted.Prop) ?? []).Select(OnProp))
                .OfType<MountingStep>()
                .Concat(Tachometer(history, fitted.Position))
                .Concat(Meters(history, fitted.Position))
                .Concat(OtherProps(history, fitted.Position))
                .Append(begun)
                .Where(s => mounting.Holds(s.Entry))
                .OrderBy(s => s.Entry, history.Order),
        ];
    }

    private static MountingStep? OnBoat(IFact fact, Position position) => fact switch
    {
        StrikeReported s when s.Position == position =>
            new(s.Entry, HistoryMarkKind.Strike, $"strike, {Words.Prose(s.Severity)}", s.Severity != StrikeSeverity.NoMark),
        Inspections.Inspected i when i.Position == position =>
            new(i.Entry, HistoryMarkKind.Inspection, $"inspected: {Words.Prose(i.Verdict)}", NewBaseline: false),
        PropCleaned c when c.Position == position => new(c.Entry, HistoryMarkKind.PropCleaned, "prop cleaned"),
        HullCleaned c => new(c.Entry, HistoryMarkKind.HullCleaned, "hull cleaned"),
        RigChanged r when (r.Position ?? position) == position =>
            new(r.Entry, HistoryMarkKind.Rig, r.Change == RigChange.Other ? "rig changed" : $"{Words.Prose(r.Change)} changed"),
        BoatRelaunched r => new(r.Entry, HistoryMarkKind.Relaunch, "relaunched"),
        _ => null,
    };

    private static MountingStep? OnProp(IFact fact) => fact switch
    {
        Repitched r => new(r.Entry, HistoryMarkKind.Repitch, $"repitched to {r.PitchAfterInches:0.##} in"),
        PropRepaired r => new(r.Entry, HistoryMarkKind.Repair, $"{string.Join(", ", r.Work.Select(w => Words.Prose(w)))}"),
        HubReplaced h => new(h.Entry, HistoryMarkKind.Hub, "new hub"),
        _ => null,
    };

    /// <summary>A new meter is no change of what the boat turns: it is told for the picture alone.</summary>
    private static IEnumerable<MountingStep> Meters(BoatHistory history, Position position) =>
        from hung in history.Engines.Where(e => e.Position == position)
        from replaced in (history.EngineFacts.GetValueOrDefault(hung.Engine) ?? []).OfType<MeterReplaced>()
        where hung.Holds(replaced.Entry)
        select new MountingStep(replaced.Entry, HistoryMarkKind.HourMeter, "new hour meter", NewBaseline: false);

    /// <summary>A gauge whose error moved by more than its step shows other RPM for the same speed of the engine. A first check says only what the error is.</summary>
    private static IEnumerable<MountingStep> Tachometer(BoatHistory history, Position position) =>
        from hung in history.Engines.Where(e => e.Position == position)
        from error in GaugeErrors.Of(history, hung.Engine).Skip(1)
        where hung.Holds(error.Since)
        select new MountingStep(error.Since, HistoryMarkKind.Tachometer, $"tachometer shows {error.FirstRpm:+0;-0;0} RPM");

    /// <summary>Twins share one speed: another prop on one side changes what the other side turns.</summary>
    private static IEnumerable<MountingStep> OtherProps(BoatHistory history, Position position)
    {
        foreach (var other in history.Mountings.Where(m => m.Fitted.Position != position).GroupBy(m => m.Fitted.Position))
        {
            var at = Words.Of(other.Key);
            MountingSpan? before = null;
            foreach (var next in other)
            {
                bool Since(IFact work) => before is { To: { } off } && history.Order.Compare(work.Entry, off) >= 0 && history.Order.Compare(work.Entry, next.Fitted.Entry) <= 0;
                var worked = WorkOn(history, next).ToList();
                if (before is not null && (before.Fitted.Prop != next.Fitted.Prop || !next.PropKnown() || worked.Exists(Since)))
                    yield return new MountingStep(next.Fitted.Entry, HistoryMarkKind.OtherProp, $"other prop at {at}");

                // Papers of a shop are written late: a prop that runs did not change when they were.
                foreach (var work in worked.Where(w => w is not PropBackFromShop && next.Holds(w.Entry)))
                    yield return new MountingStep(work.Entry, HistoryMarkKind.OtherProp, $"prop at {at} changed");
                before = next;
            }
        }
    }

    private static IEnumerable<IFact> WorkOn(BoatHistory history, MountingSpan mounting) =>
        (history.Props.GetValueOrDefault(mounting.Fitted.Prop) ?? [])
            .Where(f => f is Repitched or PropRepaired or PropBackFromShop { PitchInches: not null } or PropBackFromShop { DiameterInches: not null });
}
