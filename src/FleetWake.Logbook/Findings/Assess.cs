using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Inspections;

namespace FleetWake.Logbook.Findings;

/// <summary>Assesses a boat's history. Pure and free of the clock: recomputed whole whenever a record of the boat arrives, however late.</summary>
public static partial class Assess
{
    /// <summary>Name and version of the method; part of what a stored finding is keyed by.</summary>
    public const string Method = "fleet-drift-1";

    /// <summary>More trials than these no boat runs between two digests of the month.</summary>
    private const int MostTrials = 40;

    /// <summary>The finding of a boat.</summary>
    /// <param name="dossier">Everything that bears on it.</param>
    /// <param name="priors">What its fleet has shown; what the trade expects when left out.</param>
    public static BoatFinding Boat(Dossier dossier, FleetPriors? priors = null) => Boat(BoatHistory.Tell(dossier), priors);

    /// <summary>The finding of a boat whose history is told already.</summary>
    /// <param name="history">Its history.</param>
    /// <param name="priors">What its fleet has shown; what the trade expects when left out.</param>
    public static BoatFinding Boat(BoatHistory history, FleetPriors? priors = null)
    {
        priors ??= FleetPriors.Trade;
        var (registered, home) = (history.Registered, history.Home);
        var suspicions = new Suspicions(history);
        IReadOnlyList<PositionFinding> positions = [.. Positions(history, suspicions).Select(p => At(history, suspicions, p, priors))];
        return new BoatFinding(
            history.Boat,
            registered is null || home is null ? null : new BoatCard(registered.Name, home.Dock, home.DockZone, home.Water, registered.Entry.Date()) { Bottom = home.Bottom },
            positions,
            history.Contradictions,
            registered is null ? history.Facts.Count : 0,
            Method)
        {
            PriorNumber = priors.Number,
            PropPlan = [.. history.PropPlan.Select(PlannedProp.Of)],
            Split = TwinSplit.Of(positions),
            LayUp = AssessSeason.LayUp(history),
            Hold = AssessSeason.Hold(history),
            Retired = AssessSeason.Retired(history),
            LastTrials = [.. history.Trials.TakeLast(MostTrials).Select(t => new TrialDay(t.Entry.Id, t.Entry.Date()))],
            ClaimsDue = ClaimDue.Of(Claims.Claims.Of(history.Facts, history.Original)),
        };
    }

    private static IEnumerable<Position> Positions(BoatHistory history, Suspicions suspicions) =>
        // A position that the boat does not have is asked about, and meanwhile what blocks there still blocks.
        (history.Registered?.Positions ?? []).Concat(history.Engines.Select(e => e.Position))
            .Concat(history.Strikes.Select(s => s.Position).Distinct().Where(p => suspicions.OpenStrikes(p).Count > 0))
            .Concat(history.Inspections.Select(i => i.Position).Distinct().Where(p => suspicions.Uncleared(p).Count > 0))
            .Concat(history.Facts.OfType<LookedOver>().Select(l => l.Position).Distinct().Where(p => suspicions.Damage(p) is not null))
            .Concat(history.Mountings.Where(m => m.To is null && suspicions.Carried(m, null).Count > 0).Select(m => m.Fitted.Position))
            .Distinct().Order();

    private static PositionFinding At(BoatHistory history, Suspicions suspicions, Position position, FleetPriors priors)
    {
        var hung = history.Engines.LastOrDefault(e => e.Position == position && e.To is null);
        var engine = hung is null ? null : Card(history, hung.Engine);
        var meter = hung is null ? null : history.Meters.GetValueOrDefault(hung.Engine);
        var mounting = history.Mountings.LastOrDefault(m => m.Fitted.Position == position && m.To is null);
        var last = history.Inspections.LastOrDefault(i => i.Position == position);
        DateOnly?[] looks = [last?.Entry.Date(), history.Mountings.LastOrDefault(m => m.Fitted.Position == position && !m.Found)?.Fitted.Entry.Date()];
        var use = new AssessUse(history, position, hung, meter, mounting);
        var outing = use.FirstOuting();
        var open = suspicions.OpenStrikes(position);
        return new PositionFinding(
            position,
            engine,
            meter?.Readings.LastOrDefault()?.Hours,
            mounting is null ? null : AssessMounting.Of(history, mounting, engine, meter, priors),
            open,
            last is null ? null : suspicions.Card(last),
            looks.Max() ?? hung?.From.Date() ?? mounting?.Fitted.Entry.Date() ?? NeverHung(history, position))
        {
            Uncleared = suspicions.Uncleared(position),
            Damage = suspicions.Damage(position),
            Carried = suspicions.Carried(mounting, hung),
            Doings = use.Doings(),
            Began = use.Began(),
            Taken = use.Taken(),
            FirstOutingOn = outing?.At.Date(),
            RetorqueSeenTo = use.RetorqueSeenTo(outing),
            Use = use.Use(),
            Fitted = use.Fitted(),
            Struck = use.Struck(open),
            DoneSinceOuting = use.DoneSince(outing?.At),
            DoneSinceLayUp = use.DoneSince(AssessSeason.LaidUpAt(history)),
            NotOnBoat = NotOnBoat(history, position),
            EngineOffOn = EngineOffOn(history, position),
            PropOffOn = PropOffOn(history, position),
        };
    }

    /// <summary>A boat of which nobody told an engine has one all the same, since its registration at the latest; one that came off leaves nothing to look at.</summary>
    private static DateOnly? NeverHung(BoatHistory history, Position position) =>
        history.Engines.Any(e => e.Position == position) ? null : history.Registered?.Entry.Date();

    internal static EngineCard Card(BoatHistory history, string engine)
    {
        var fastening = history.EngineFacts.GetValueOrDefault(engine)?.OfType<FasteningStated>().LastOrDefault();
        var card = history.EngineCards.TryGetValue(engine, out var r)
            ? new EngineCard(engine, r.Model, r.BandLowRpm, r.BandHighRpm, r.GearRatio, r.NutTorque, r.NutTorqueUnit, r.TachometerStepRpm) { Tachometer = TachometerCard.Of(history, engine), AirIntake = r.AirIntake }
            : new EngineCard(engine, null, null, null, null, null, null, null);
        return card with { Fastening = fastening?.Fastening, Retorque = fastening?.Retorque };
    }
}
