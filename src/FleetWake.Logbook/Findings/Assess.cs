using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses a boat's history. Pure and free of the clock: recomputed whole whenever a record of the boat arrives, however late.</summary>
public static partial class Assess
{
    /// <summary>Name and version of the method; part of what a stored finding is keyed by.</summary>
    public const string Method = "straight-line-2";

    /// <summary>The finding of a boat.</summary>
    public static BoatFinding Boat(Dossier dossier) => Boat(BoatHistory.Tell(dossier));

    /// <summary>The finding of a boat whose history is told already.</summary>
    public static BoatFinding Boat(BoatHistory history)
    {
        var (registered, home) = (history.Registered, history.Home);
        IReadOnlyList<PositionFinding> positions = [.. Positions(history).Select(p => At(history, p))];
        return new BoatFinding(
            history.Boat,
            registered is null || home is null ? null : new BoatCard(registered.Name, home.Dock, home.DockZone, home.Water, registered.Entry.Date()) { Bottom = home.Bottom },
            positions,
            history.Contradictions,
            registered is null ? history.Facts.Count : 0,
            Method)
        {
            PropPlan = [.. history.PropPlan.Select(PlannedProp.Of)],
            Split = TwinSplit.Of(positions),
        };
    }

    private static IEnumerable<Position> Positions(BoatHistory history) =>
        // A position that the boat does not have is asked about, and meanwhile what blocks there still blocks.
        (history.Registered?.Positions ?? []).Concat(history.Engines.Select(e => e.Position))
            .Concat(history.Strikes.Select(s => s.Position).Where(p => OpenStrikes(history, p).Count > 0))
            .Concat(history.Inspections.Select(i => i.Position).Where(p => Uncleared(history, p).Count > 0))
            .Distinct().Order();

    private static PositionFinding At(BoatHistory history, Position position)
    {
        var hung = history.Engines.LastOrDefault(e => e.Position == position && e.To is null);
        var engine = hung is null ? null : Card(history, hung.Engine);
        var meter = hung is null ? null : history.Meters.GetValueOrDefault(hung.Engine);
        var mounting = history.Mountings.LastOrDefault(m => m.Fitted.Position == position && m.To is null);
        var last = history.Inspections.LastOrDefault(i => i.Position == position);
        DateOnly?[] looks = [last?.Entry.Date(), history.Mountings.LastOrDefault(m => m.Fitted.Position == position)?.Fitted.Entry.Date()];
        return new PositionFinding(
            position,
            engine,
            meter?.Readings.LastOrDefault()?.Hours,
            mounting is null ? null : AssessMounting.Of(history, mounting, engine, meter),
            OpenStrikes(history, position),
            last is null ? null : Card(last),
            looks.Max() ?? hung?.From.Date())
        {
            Uncleared = Uncleared(history, position),
        };
    }

    /// <summary>Only a "fit" that comes after a strike clears it; a strike told late is open again until then.</summary>
    private static List<OpenStrike> OpenStrikes(BoatHistory history, Position position) =>
    [
        .. history.Strikes
            .Where(s => s.Position == position && s.Severity != StrikeSeverity.NoMark)
            .Where(s => !FitAfter(history, position, s.Entry).Any())
            .Select(s => new OpenStrike(s.Entry.Id, s.Entry.Date(), s.Object, s.Severity)),
    ];

    private static List<InspectionCard> Uncleared(BoatHistory history, Position position) =>
    [
        .. history.Inspections
            .Where(i => i.Position == position && (i.Verdict is Verdict.TakeOff or Verdict.Repair || i.Marks.Any(Grave)))
            .Where(i => !FitAfter(history, position, i.Entry).Any())
            .Select(Card),
    ];

    /// <summary>What no verdict of "fit" can stand beside: it clears nothing then.</summary>
    private static bool Grave(InspectionMark mark) => mark is InspectionMark.HubSlip or InspectionMark.Crack or InspectionMark.WaterInOil;

    private static IEnumerable<Inspected> FitAfter(BoatHistory history, Position position, Entry entry) =>
        history.Inspections.Where(i => i.Position == position && i.Verdict == Verdict.Fit && !i.Marks.Any(Grave) && history.Order.Compare(i.Entry, entry) > 0);

    private static InspectionCard Card(Inspected inspected) => new(inspected.Entry.Date(), inspected.Verdict, inspected.Marks);

    internal static EngineCard Card(BoatHistory history, string engine) =>
        history.EngineCards.TryGetValue(engine, out var r)
            ? new EngineCard(engine, r.Model, r.BandLowRpm, r.BandHighRpm, r.GearRatio, r.NutTorque, r.NutTorqueUnit, r.TachometerStepRpm) { Tachometer = TachometerCard.Of(history, engine) }
            : new EngineCard(engine, null, null, null, null, null, null, null);
}
