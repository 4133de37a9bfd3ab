using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses a boat's history. Pure and free of the clock: recomputed whole whenever a record of the boat arrives, however late.</summary>
public static class Assess
{
    /// <summary>Name and version of the method; part of what a stored finding is keyed by.</summary>
    public const string Method = "straight-line-1";

    /// <summary>The finding of a boat.</summary>
    public static BoatFinding Boat(Dossier dossier)
    {
        var history = BoatHistory.Tell(dossier);
        var registered = history.Registered;
        return new BoatFinding(
            history.Boat,
            registered is null ? null : new BoatCard(registered.Name, registered.Dock, registered.DockZone, registered.Water, registered.Entry.Date()),
            [.. Positions(history).Select(p => At(history, p))],
            history.Contradictions,
            registered is null ? history.Facts.Count : 0,
            Method);
    }

    private static IEnumerable<Position> Positions(BoatHistory history) =>
        (history.Registered?.Positions ?? []).Concat(history.Engines.Select(e => e.Position)).Distinct().Order();

    private static PositionFinding At(BoatHistory history, Position position)
    {
        var hung = history.Engines.LastOrDefault(e => e.Position == position && e.To is null);
        var engine = hung is null ? null : Card(history, hung.Engine);
        var meter = hung is null ? null : history.Meters.GetValueOrDefault(hung.Engine);
        var mounting = history.Mountings.LastOrDefault(m => m.Fitted.Position == position && m.To is null);
        var inspections = history.Inspections.Where(i => i.Position == position).ToList();
        var last = inspections.LastOrDefault();
        DateOnly?[] looks = [last?.Entry.Date(), history.Mountings.LastOrDefault(m => m.Fitted.Position == position)?.Fitted.Entry.Date(), hung?.From.Date()];
        return new PositionFinding(
            position,
            engine,
            meter?.Readings.LastOrDefault()?.Hours,
            mounting is null ? null : AssessMounting.Of(history, mounting, engine, meter),
            OpenStrikes(history.Strikes.Where(s => s.Position == position), inspections),
            last is null ? null : new InspectionCard(last.Entry.Date(), last.Verdict, last.Marks),
            looks.Max());
    }

    /// <summary>Only a "fit" that comes after a strike clears it; a strike told late is open again until then.</summary>
    private static List<OpenStrike> OpenStrikes(IEnumerable<StrikeReported> strikes, List<Inspected> inspections) =>
    [
        .. strikes
            .Where(s => s.Severity != StrikeSeverity.NoMark)
            .Where(s => !inspections.Any(i => i.Verdict == Verdict.Fit && EntryOrder.Instance.Compare(i.Entry, s.Entry) > 0))
            .Select(s => new OpenStrike(s.Entry.Id, s.Entry.Date(), s.Object, s.Severity)),
    ];

    private static EngineCard Card(BoatHistory history, string engine) =>
        history.EngineCards.TryGetValue(engine, out var r)
            ? new EngineCard(engine, r.Model, r.BandLowRpm, r.BandHighRpm, r.GearRatio, r.NutTorque, r.NutTorqueUnit, r.TachometerStepRpm)
            : new EngineCard(engine, null, null, null, null, null, null, null);
}
