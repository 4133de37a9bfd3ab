using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Store.Devices;
using FleetWake.Store.Quarantine;

namespace FleetWake.Web.Office.Quarantine;

/// <summary>A kept entry in words.</summary>
/// <param name="Kept">The entry.</param>
/// <param name="Phone">The phone that it came from; null when it is not known any more.</param>
/// <param name="Kind">Its kind in words.</param>
/// <param name="Boat">The boat that it is about, where it is about one.</param>
/// <param name="About">What else it is about: an engine, a prop, a part.</param>
/// <param name="By">Who told it, as it says.</param>
/// <param name="HappenedAt">When it happened, as it says.</param>
/// <param name="Fields">The rest of it, field by field.</param>
public sealed record KeptWords(
    KeptEntry Kept, DeviceCard? Phone, string Kind, string? Boat, string? About, string By, string HappenedAt, IReadOnlyList<(string Name, string Value)> Fields)
{
    private static readonly string[] Subjects = ["engine", "prop", "part"];

    internal static KeptWords Of(KeptEntry kept, DeviceCard? phone)
    {
        var record = JsonNode.Parse(kept.Raw)!.AsObject();
        var entry = record["entry"] as JsonObject;
        var about = Subjects.FirstOrDefault(s => record[s] is not null);
        var fields = new List<(string Name, string Value)>();
        foreach (var (name, value) in record)
        {
            if (name is not ("entry" or "kind" or "boat") && name != (record["boat"] is null ? about : null)) Tell(Words(name), value, fields);
        }

        return new KeptWords(
            kept, phone, kept.Kind.Replace('_', ' '), record["boat"]?.ToString(), about is null ? null : $"{about} {record[about]}", entry?["by"]?.ToString() ?? "?",
            entry?["happenedAt"]?.ToString().Replace('T', ' ') ?? "?", fields);
    }

    private static void Tell(string name, JsonNode? value, List<(string Name, string Value)> fields)
    {
        if (value is JsonObject inner)
            foreach (var (field, part) in inner) Tell($"{name} {Words(field)}", part, fields);
        else if (value is JsonArray list)
            for (var i = 0; i < list.Count; i++) Tell($"{name} {i + 1}", list[i], fields);
        else if (value is not null)
            fields.Add((name, value.ToString().Replace('_', ' ')));
    }

    /// <summary>"airTemperatureCelsius" as "air temperature celsius".</summary>
    private static string Words(string name)
    {
        var words = new StringBuilder();
        foreach (var c in name) words.Append(char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : c);
        return words.ToString();
    }
}
