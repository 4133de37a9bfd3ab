using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace FleetWake.Logbook.Entries;

/// <summary>Reads records from JSON, strictly: an unknown field is a refusal, for it may be a torque in a unit nobody will see.</summary>
public static class RecordReading
{
    private static readonly JsonSerializerOptions Strict = MakeStrict();

    /// <summary>Reads one record of a kind; refusals name their field by JSON pointer.</summary>
    public static (ICommand? Command, IReadOnlyList<Refusal> Refusals) Read(RecordKind kind, JsonNode? node)
    {
        if (node is not JsonObject record) return (null, [new Refusal("", "not_an_object", "a record is a JSON object")]);
        if (record.TryGetPropertyValue("kind", out var named))
        {
            if (named?.ToString() != kind.Name) return (null, [new Refusal("/kind", "other_kind", $"this is the place for {kind.Name}")]);
            record.Remove("kind");
        }

        try
        {
            return ((ICommand?)record.Deserialize(kind.CommandType, Strict), []);
        }
        catch (JsonException e)
        {
            return (null, [Refused(kind, e)]);
        }
    }

    private static Refusal Refused(RecordKind kind, JsonException e)
    {
        var field = Pointer(e.Path);
        if (e.Message.Contains("could not be mapped to any .NET member", StringComparison.Ordinal))
        {
            var name = field[(field.LastIndexOf('/') + 1)..];
            var fields = kind.CommandType.GetProperties().Where(p => p.GetMethod is { IsStatic: false }).Select(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name));
            var known = field.Count(c => c == '/') == 1 ? $"; its fields are {string.Join(", ", fields)}" : "";
            return new Refusal(field, "unknown_field", $"\"{name}\" is not a field of {kind.Name}{known}");
        }

        return new Refusal(field, "wrong_type", "this value is not of the kind that belongs here: a number stands without quotes, a word or a date with them, an id is a UUID");
    }

    /// <summary>"$.runs[0].speed" as "/runs/0/speed".</summary>
    private static string Pointer(string? path) =>
        (path ?? "$")[1..].Replace("['", ".", StringComparison.Ordinal).Replace("']", "", StringComparison.Ordinal)
            .Replace('[', '/').Replace("]", "", StringComparison.Ordinal).Replace('.', '/');

    private static JsonSerializerOptions MakeStrict()
    {
        var options = LogbookJson.Configure(new JsonSerializerOptions());
        options.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        options.MaxDepth = 16;
        options.MakeReadOnly();
        return options;
    }
}
