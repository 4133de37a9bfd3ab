using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Boat;

/// <summary>A record in a line: the usual ones in a sentence, any other by its name and what it says.</summary>
internal static class TimelineWords
{
    private const int LongestValue = 60;

    public static string Of(IFact fact, Measures m) => fact switch
    {
        StrikeReported s => $"Strike on {(s.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(s.Object))}, {Words.Prose(s.Severity)}{At(s.Position)}",
        Inspected i => $"Inspection: {Words.Prose(i.Verdict)}{(i.Marks.Count > 0 ? ", with " + string.Join(", ", i.Marks.Select(x => Words.Prose(x))) : "")}{At(i.Position)}",
        PropMounted p => $"Prop {p.Prop} fitted{At(p.Position)}{Hours(p.Hours, m)}",
        PropRemoved p => $"Prop {p.Prop} taken off ({Words.Prose(p.Why)}){At(p.Position)}{Hours(p.Hours, m)}",
        FoundFitted f => $"Prop {f.Prop ?? "of unknown tag"} found fitted{At(f.Position)}{Hours(f.Hours, m)}",
        TrialRun t => Trial(t, m),
        EngineFitted e => $"Engine {e.Engine} hung{At(e.Position)}{Hours(e.Hours, m)}",
        TakenOutOfHire h => $"Taken out of hire ({Words.Prose(h.Why)})",
        ReturnedToHire h => $"Back in hire ({Words.Prose(h.Why)})",
        DutyTaken d => $"Duty taken: {d.Rule}",
        DutyDone d => $"Duty done: {d.Rule}",
        Retracted => "Taken back",
        _ => Any(fact),
    };

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
