using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;
using FleetWake.Reports.Pictures;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Boat;

/// <summary>A record in a line: the usual ones in a sentence, any other by its name and what it says.</summary>
internal static class TimelineWords
{
    private const int LongestValue = 60;

    /// <summary>The line of a record.</summary>
    /// <param name="fact">The record.</param>
    /// <param name="m">How the reader reads numbers.</param>
    /// <param name="namings">Names of what it calls by id; ids stand as they are when left out.</param>
    public static string Of(IFact fact, Measures m, Namings? namings = null) => fact switch
    {
        StrikeReported s => $"Strike on {(s.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(s.Object))}, {Words.Prose(s.Severity)}{At(s.Position)}{Hours(s.Hours, m)}",
        Inspected i => $"Inspection: {Words.Prose(i.Verdict)}{(i.Marks.Count > 0 ? ", with " + string.Join(", ", i.Marks.Select(x => Words.Prose(x))) : "")}{At(i.Position)}{Hours(i.Hours, m)}",
        LookedOver l => $"Short look{(l.Moment == LookMoment.AtDock ? "" : " " + Words.Prose(l.Moment))}: {Words.Prose(l.Seen)}{At(l.Position)}{(l.Hire is { } hire ? $", hire {hire}" : "")}",
        PropMounted p => $"Prop {p.Prop} fitted{At(p.Position)}{Hours(p.Hours, m)}",
        PropRemoved p => $"Prop {p.Prop} taken off ({Words.Prose(p.Why)}){At(p.Position)}{Hours(p.Hours, m)}",
        FoundFitted f => $"Prop {f.Prop ?? "of unknown tag"} found fitted{At(f.Position)}{Hours(f.Hours, m)}",
        PropCleaned p => $"Prop cleaned{At(p.Position)}",
        NutRetorqued n => $"Nut tightened again{At(n.Position)}{(n is { Torque: { } torque, TorqueUnit: { } unit } ? $" to {m.Torque(torque, unit)}" : "")}{(n.NewPin == true ? ", with a new pin" : "")}{Hours(n.Hours, m)}",
        TrialRun t => Trial(t, m),
        NormalisedRpmRead n => $"RPM told as at reference air: {m.Number(n.Rpm)} RPM{At(n.Position)}{Hours(n.Hours, m)}",
        EngineFitted e => $"Engine {Engine(e.Engine, namings)} hung{At(e.Position)}{Hours(e.Hours, m)}",
        EngineRemoved e => $"{(e.Engine is { } engine ? $"Engine {Engine(engine, namings)}" : "An engine")} taken off{At(e.Position)}{Hours(e.Hours, m)}",
        EngineRegistered e => $"Engine {Phrases.Plain(e.Model)} registered: band {m.Number(e.BandLowRpm)} to {m.Number(e.BandHighRpm)} RPM, gear {m.Number(e.GearRatio, 2)}",
        EngineServiced e => $"Engine serviced: {string.Join(", ", e.Work.Select(w => Words.Prose(w)))}{Hours(e.Hours, m)}",
        HoursRead h => $"Hour meter read at {m.Number(h.Hours, 1)} h, engine {Engine(h.Engine, namings)}",
        MeterReplaced r => $"New hour meter: it began at {m.Number(r.NewHours, 1)} h{(r.OldHours is { } old ? $", the old one stood at {m.Number(old, 1)} h" : "")}",
        TachometerChecked t => $"Tachometer checked: it showed {m.Number(t.ShownRpm)} RPM at {m.Number(t.TrueRpm)}",
        PropRegistered p => $"Prop {p.Prop} registered: {PropWords.Size(p.DiameterInches, p.PitchInches)} in, {p.Blades} blades, {Words.Prose(p.Material)}, {Words.Prose(p.Rotation)}-handed",
        BoatRegistered b => $"Boat registered: {Phrases.Plain(b.Name)}, at home at {Dock(b.Dock, namings)}, {Words.Prose(b.Water)} water",
        BoatRehomed b => $"New home dock: {Dock(b.Dock, namings)}{(b.Water is { } water ? $", {Words.Prose(water)} water" : "")}{(b.Bottom is { } bottom ? $", {Words.Prose(bottom)} bottom" : "")}",
        LaidUp l => $"Laid up{(l.RelaunchOn is { } on ? $", out again about {m.Date(on)}" : "")}",
        BoatRelaunched => "Relaunched",
        BoatRetired b => $"Left the fleet ({Words.Prose(b.Why)})",
        HullCleaned => "Hull cleaned",
        RigChanged r => $"Rig changed: {Words.Prose(r.Change)}{(r.Position is { } at ? At(at) : "")}",
        PropPlanned p => $"Prop plan, {Words.Prose(p.Use)}{At(p.Position)}: {PropWords.Size(p.DiameterInches, p.PitchInches)} in",
        TakenOutOfHire h => $"Taken out of hire ({Words.Prose(h.Why)})",
        ReturnedToHire h => $"Back in hire ({Words.Prose(h.Why)})",
        DutyTaken d => $"Duty taken: {Rule(d.Rule, namings)}{(d.Position is { } at ? At(at) : "")}",
        DutyDone d => $"Duty done: {Rule(d.Rule, namings)}{(d.Position is { } at ? At(at) : "")}{Hours(d.Hours, m)}",
        ContradictionSettled c => $"Question answered ({Words.Prose(c.Contradiction)}): {(c.Answer == SettlementAnswer.BothStand ? "it is as it was told" : "put right, or left out")}",
        ClaimOpened c => $"Claim opened for hire {Phrases.Plain(c.Hire)}{At(c.Position)}{(c.Deadline is { } last ? $", to be made by {m.Date(last)}" : "")}",
        ClaimCosted c => $"Cost of a claim, {Words.Prose(c.Stage)}: {MoneyLine.Of(new Logbook.Office.Money(c.Amount, c.Currency), m)}",
        ClaimClosed c => $"Claim closed: {Words.Prose(c.Outcome)}{(c is { Amount: { } amount, Currency: { } currency } ? $", {MoneyLine.Of(new Logbook.Office.Money(amount, currency), m)}" : "")}",
        Retracted r => $"A record taken back ({Words.Prose(r.Why)})",
        _ => Any(fact),
    };

    private static string Engine(string id, Namings? namings) => (namings ?? Namings.None).Engine(id);

    private static string Dock(string id, Namings? namings) => (namings ?? Namings.None).Dock(id);

    private static string Rule(string id, Namings? namings) => (namings ?? Namings.None).Rule(id);

    private static string Trial(TrialRun t, Measures m)
    {
        var rpm = t.Runs.SelectMany(r => r.Tachometers).GroupBy(x => x.Position)
            .Select(g => $"{m.Number(g.Average(x => x.Rpm))} RPM{At(g.Key)}{(g.Any(x => x.LimiterReached) ? " (limiter)" : "")}");
        var runs = t.Runs.Count == 1 ? "1 run" : $"{t.Runs.Count} runs";
        return $"Trial, {(t.Throttle == Throttle.WideOpen ? "wide open" : "part throttle")}, {runs}: {string.Join(", ", rpm)}, {m.Speed(t.Runs.Average(Knots))}";
    }

    private static double Knots(Run run) => (run.SpeedUnit switch
    {
        SpeedUnit.Mph => Propulsion.Speed.FromMilesPerHour(run.Speed),
        SpeedUnit.KmPerH => Propulsion.Speed.FromKilometresPerHour(run.Speed),
        SpeedUnit.MPerS => Propulsion.Speed.FromMetresPerSecond(run.Speed),
        _ => Propulsion.Speed.FromKnots(run.Speed),
    }).Knots;

    private static string At(Logbook.Position position) => position == Logbook.Position.Single ? "" : $" at {Words.Prose(position)}";

    private static string Hours(double? hours, Measures m) => hours is { } h ? $", {m.Number(h, 1)} h" : "";

    /// <summary>Name of the record and its own fields as they were told; names and notes of people are none of them.</summary>
    private static string Any(IFact fact)
    {
        var name = LogbookJson.StoredNames[fact.GetType()].Replace('_', ' ');
        var told = JsonSerializer.SerializeToNode(fact, fact.GetType(), LogbookJson.Options)!.AsObject()
            .Where(f => f.Key is not ("entry" or "boat") && f.Value is not null and not JsonArray { Count: 0 })
            .Select(f => $"{Spaced(f.Key)} {Value(f.Value!)}");
        return $"{char.ToUpperInvariant(name[0])}{name[1..]}{(string.Join(", ", told) is { Length: > 0 } all ? $": {all}" : "")}";
    }

    private static string Value(JsonNode node) => node switch
    {
        JsonArray list => string.Join(", ", list.Select(i => i is null ? "" : Value(i))),
        JsonObject fields => string.Join(" ", fields.Where(f => f.Value is not null).Select(f => $"{Spaced(f.Key)} {Value(f.Value!)}")),
        JsonValue value when value.TryGetValue<string>(out var text) => (text.Length > LongestValue ? text[..LongestValue] + "…" : text).Replace('_', ' '),
        JsonValue value when value.TryGetValue<bool>(out var yes) => yes ? "yes" : "no",
        JsonValue value when value.TryGetValue<double>(out var number) => number.ToString("0.###", CultureInfo.InvariantCulture),
        _ => node.ToJsonString(),
    };

    private static string Spaced(string camel) => string.Concat(camel.Select(c => char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : c.ToString()));
}
