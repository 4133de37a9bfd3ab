using FleetWake.Logbook;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion;
using FleetWake.Reports.Pictures;
using FleetWake.Web.Api.Reading;

namespace FleetWake.Web.Dock;

/// <summary>Makes cards of findings. Every sentence is one that the digest, the pictures or the hire table say.</summary>
/// <param name="Dock">The phone's dock.</param>
/// <param name="Policy">The operator's policy.</param>
/// <param name="Priors">What the fleet has shown.</param>
/// <param name="Spares">Spare props and parts.</param>
/// <param name="Now">The server's clock.</param>
/// <param name="Behind">Boats whose finding lacks a record.</param>
/// <param name="DockName">The name of a dock.</param>
internal sealed record Cards(string Dock, FleetPolicy Policy, FleetPriors Priors, SpareGathering Spares, DateTimeOffset Now, IReadOnlySet<string> Behind, Func<string, string> DockName)
{
    /// <summary>Trials that say what a boat usually carries.</summary>
    private const int UsualTrials = 5;

    /// <summary>The card of a boat.</summary>
    /// <param name="finding">Its finding.</param>
    /// <param name="history">Its history.</param>
    public Card Of(BoatFinding finding, BoatHistory history)
    {
        var hire = HireStates.Of(finding, Policy);
        var due = finding.Registered is { } home ? Outlook.Of(finding, TodayAt(home.DockZone), Policy) : [];
        return new Card(
            finding.Boat, finding.DisplayName(), finding.Registered?.Dock, finding.Registered?.Water,
            new CardHire(hire.Word, [.. hire.Reasons.Select(r => new CardReason(r.Sentence, r.ReleasedBy, r.Word, r.Position))], Lifted(finding)),
            [.. Attentions.Of(finding, Policy).Select(a => Placed(finding, a.Position, a.Sentence))],
            [.. due.Select(d => new CardDue(d.What, d.DueOn, d.Why, d.Overdue(), d.RuleId, d.Kind, d.Position, d.TakenBy))],
            Usual(history),
            [.. finding.Positions.Where(p => !p.NotOnBoat).Select(p => At(p, history, due))],
            !Behind.Contains(finding.Boat));
    }

    private CardPosition At(PositionFinding position, BoatHistory history, IReadOnlyList<DueItem> due)
    {
        IReadOnlyList<IFact> facts = position.Engine is { } engine ? history.EngineFacts.GetValueOrDefault(engine.Engine) ?? [] : [];
        var read = position.Engine is { } metered ? history.Meters.GetValueOrDefault(metered.Engine)?.Readings.LastOrDefault() : null;
        return new CardPosition(
            position.Position,
            Engine(position.Engine, facts),
            read is null ? null : new CardHours(read.Shown, read.Entry.Date()),
            Mounting(position, history, due),
            Standing(position),
            Reference.Of(position.Engine, Priors),
            Last(position, history),
            position.OpenStrikes,
            [.. Spares.For(position, facts).Spares.Select(Fit).OrderByDescending(f => f.Here).ThenBy(f => f.Answer).ThenBy(f => f.Prop, StringComparer.Ordinal)]);
    }

    /// <summary>The last day on which a hand lifted what is still open.</summary>
    private static DateOnly? Lifted(BoatFinding finding) => finding.Positions.Where(p => !p.NotOnBoat)
        .SelectMany(p => p.OpenStrikes.Select(s => s.LiftedOn).Concat(p.Uncleared.Select(i => i.LiftedOn)).Concat(p.Carried.Select(c => c.LiftedOn)).Append(p.Damage?.LiftedOn))
        .Max();

    private CardFit Fit(SpareFit spare) => new(
        spare.Prop, Size(spare.DiameterInches, spare.PitchInches), spare.Dock is { } lies ? DockName(lies) : null, spare.Dock == Dock, spare.Answer, string.Join("; ", spare.Points.Select(p => p.Sentence)));

    /// <summary>Diameter and pitch as people say them.</summary>
    public static string? Size(double? diameter, double? pitch) => diameter is { } d && pitch is { } p ? $"{d:0.##} x {p:0.##} in" : null;

    private static string Placed(BoatFinding finding, Position? position, string sentence)
    {
        if (position is not { } at || finding.Positions.Count < 2) return sentence;
        var word = Words.Prose(at);
        return $"{char.ToUpperInvariant(word[0])}{word[1..]}: {sentence}";
    }

    private static CardEngine? Engine(EngineCard? engine, IReadOnlyList<IFact> facts) => engine is null ? null : new CardEngine(
        engine.Engine,
        engine.Model,
        engine is { BandLowRpm: { } low, BandHighRpm: { } high } ? new CardBand(low, high) : null,
        engine.GearRatio,
        Torque(engine.NutTorque, engine.NutTorqueUnit),
        facts.OfType<FasteningStated>().LastOrDefault() is { } stated
            ? new CardFastening(
                stated.Fastening, Torque(stated.TorqueLow, stated.TorqueUnit) is { } from ? new CardTorqueRange(from, Torque(stated.TorqueHigh, stated.TorqueUnit)) : null, stated.MostSlots, stated.Retorque)
            : null,
        engine.TachometerStepRpm,
        engine.Tachometer?.ErrorPercent);

    private static CardTorque? Torque(double? value, TorqueUnit? unit)
    {
        if (value is not { } number || unit is not { } told) return null;
        var torque = told == TorqueUnit.PoundForceFoot ? Propulsion.Torque.FromPoundForceFeet(number) : Propulsion.Torque.FromNewtonMetres(number);
        return new CardTorque(number, told, Math.Round(torque.NewtonMetres, 1), Math.Round(torque.PoundForceFeet, 1));
    }

    private static CardMounting? Mounting(PositionFinding position, BoatHistory history, IReadOnlyList<DueItem> due) => position.Mounting is not { } mounting ? null : new CardMounting(
        mounting.Mounting, mounting.Prop.Prop, mounting.Prop.DiameterInches, mounting.Prop.PitchInches, mounting.Prop.Blades, mounting.Prop.Material,
        history.Props.GetValueOrDefault(mounting.Prop.Prop)?.OfType<Logbook.Props.PropRegistered>().FirstOrDefault()?.Rotation,
        mounting.FittedOn,
        due.FirstOrDefault(d => d.Kind == DutyKind.FirstOutingRetorque && d.Position == position.Position)?.DueOn);

    private static CardStanding? Standing(PositionFinding position)
    {
        if (position.Mounting is not { } mounting) return null;
        var standing = Standings.Of(position);
        return new CardStanding(
            standing.Sign, standing.Word, standing.Sentence, standing.MarginRpm, mounting.Band.NearerEdge, standing.Outside, Phrases.Drift(mounting), Phrases.Exit(mounting.Exit));
    }

    private static LastTrial? Last(PositionFinding position, BoatHistory history)
    {
        if (history.Trials.LastOrDefault(t => t.Runs.Any(r => r.Tachometers.Any(m => m.Position == position.Position))) is not { } trial) return null;
        var worked = position.Mounting?.Trials.FirstOrDefault(t => t.Entry == trial.Entry.Id);
        return new LastTrial(
            trial.Entry.Date(), trial.Throttle, worked?.Rpm, worked?.SpeedKnots, trial.People, trial.LoadKilograms, trial.FuelPercent, trial.AirTemperatureCelsius,
            trial.PressureHectopascals, trial.HumidityPercent, trial.WindKnots, trial.WaveHeightMetres, trial.TrimDegrees, trial.WaterDepthMetres);
    }

    private static UsualLoad? Usual(BoatHistory history)
    {
        var last = history.Trials.Where(t => t.Throttle == Throttle.WideOpen && t is not { People: null, LoadKilograms: null }).TakeLast(UsualTrials).ToList();
        return last.Count == 0 ? null : new UsualLoad(Middle(last.Select(t => (double?)t.People)), Middle(last.Select(t => t.LoadKilograms)), last.Count);
    }

    private static double? Middle(IEnumerable<double?> values)
    {
        var told = values.OfType<double>().Order().ToList();
        return told.Count == 0 ? null : (told[(told.Count - 1) / 2] + told[told.Count / 2]) / 2;
    }

    private DateOnly TodayAt(string zone) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Now, TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);
}
