using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Trials;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Mend;

/// <summary>A number that somebody read off a gauge, and may have misread.</summary>
/// <param name="Field">Name of its field, the same as its place in the record: <c>runs-0-tachometers-1-rpm</c>.</param>
/// <param name="Label">What it is, for a person.</param>
/// <param name="Value">What it says now.</param>
/// <param name="Hours">It is an hour meter's reading rather than RPM.</param>
public sealed record GaugeNumber(string Field, string Label, double Value, bool Hours);

/// <summary>
/// What of a record can be corrected on a page: what a gauge was read at, which prop it was, and when. The correction is a whole
/// record of its own in place of the first; everything else is taken over as it was told.
/// </summary>
internal static class Amendment
{
    /// <summary>The kind of record that a fact came by; null of a notice that a record left on another stream.</summary>
    public static RecordKind? KindOf(IFact fact) => RecordKind.Find(LogbookJson.StoredNames[fact.GetType()]);

    /// <summary>The numbers that were read off gauges.</summary>
    public static IReadOnlyList<GaugeNumber> NumbersOf(IFact fact)
    {
        var t = PageTexts.English;
        if (fact is not TrialRun trial)
        {
            return KindOf(fact) is { } kind && Has(kind, "Hours") && Json(fact)["hours"] is JsonValue hours
                ? [new GaugeNumber("hours", t["mend.hours"], hours.GetValue<double>(), true)]
                : [];
        }

        string At(Logbook.Position at) => at == Logbook.Position.Single ? "" : $", {Words.Prose(at)}";
        return
        [
            .. trial.Meters.Select((m, i) => new GaugeNumber($"meters-{i}-hours", t["mend.hours"] + At(m.Position), m.Hours, true)),
            .. trial.Runs.SelectMany((r, i) => r.Tachometers.Select((x, j) => new GaugeNumber(
                $"runs-{i}-tachometers-{j}-rpm", t.With("mend.rpm", ("n", i + 1)) + At(x.Position), x.Rpm, false))),
        ];
    }

    /// <summary>The tag of the prop that a record of a boat names, which may be another's; null of a record that names none.</summary>
    public static string? PropOf(IFact fact) => fact is IAtPosition && Json(fact)["prop"] is JsonValue prop ? prop.GetValue<string>() : null;

    /// <summary>The record again with other numbers, another prop or another time.</summary>
    /// <param name="fact">The record as it was told.</param>
    /// <param name="parts">Small parts that were used with it.</param>
    /// <param name="stamp">The stamp of the correction.</param>
    /// <param name="numbers">What the gauges read, by field.</param>
    /// <param name="prop">The tag of the prop; null leaves it.</param>
    public static (ICommand? Command, IReadOnlyList<Refusal> Refusals) Of(
        IFact fact, IReadOnlyList<PartUsed> parts, Stamp stamp, IReadOnlyDictionary<string, double> numbers, string? prop)
    {
        var kind = KindOf(fact)!;
        var known = kind.CommandType.GetProperties().Select(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name)).ToHashSet(StringComparer.Ordinal);
        var told = Json(fact);
        foreach (var field in told.Select(f => f.Key).Where(f => !known.Contains(f)).ToList()) told.Remove(field);
        told["entry"] = JsonSerializer.SerializeToNode(stamp, LogbookJson.Options);
        foreach (var (field, value) in numbers) Set(told, field, value);
        if (prop is not null) told["prop"] = prop;
        if (parts.Count > 0 && known.Contains("parts"))
            told["parts"] = JsonSerializer.SerializeToNode(parts.Select(p => new PartSent(p.Part, p.Quantity, p.Dock)), LogbookJson.Options);
        return RecordReading.Read(kind, told);
    }

    private static void Set(JsonObject record, string field, double value)
    {
        JsonNode at = record;
        var steps = field.Split('-');
        foreach (var step in steps[..^1]) at = int.TryParse(step, out var n) ? at.AsArray()[n]! : at[step]!;
        at[steps[^1]] = value;
    }

    private static bool Has(RecordKind kind, string property) => kind.CommandType.GetProperty(property) is not null;

    private static JsonObject Json(IFact fact) => JsonSerializer.SerializeToNode(fact, fact.GetType(), LogbookJson.Options)!.AsObject();
}
