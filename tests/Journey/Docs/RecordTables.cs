using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using FleetWake.Web.Api;

namespace FleetWake.Journey.Tests.Docs;

/// <summary>The tables of records: a line for each kind, and for each kind a line for each field.</summary>
internal static class RecordTables
{
    private static readonly Arrival Now = new("docs", new DateTimeOffset(2026, 12, 1, 12, 0, 0, TimeSpan.Zero), null);

    /// <summary>The table of kinds.</summary>
    public static string Kinds()
    {
        var text = new StringBuilder("| kind | about | what it does |\n|---|---|---|\n");
        foreach (var kind in RecordKind.All) text.Append($"| [`{kind.Name}`](record-fields.md#{kind.Name}) | {About(kind)} | {Cell(kind.Summary)} |\n");
        return text.ToString();
    }

    /// <summary>The page of fields.</summary>
    public static string Fields()
    {
        var text = new StringBuilder(
            """
            # Fields of each kind of record

            Made from the code. Every record also carries its `entry`, which [records](records.md) tells of. A field that is needed
            is refused when it is left out; one that is needed *with others* is refused when what it belongs to is given without it,
            such as a number without its unit. `[]` stands for each item of a list.

            """);
        foreach (var kind in RecordKind.All)
        {
            text.Append($"\n## {kind.Name}\n\n{kind.Summary}\n\n| field | type | needed | meaning |\n|---|---|---|---|\n");
            foreach (var field in FieldsOf(kind)) text.Append($"| `{field.Path}` | {field.Type} | {field.Needed} | {Cell(field.Meaning)} |\n");
        }

        return text.ToString();
    }

    private static IEnumerable<(string Path, string Type, string Needed, string Meaning)> FieldsOf(RecordKind kind)
    {
        var missing = Refused(kind, []);
        var example = ExampleOf(kind);
        return Walk(kind.CommandType, "", "", example).Where(f => f.Path != "entry").Select(f =>
        {
            var alone = missing.Contains(f.Pointer) || f.InList && Refused(kind, Without(example, f.Pointer)).Contains(f.Pointer);
            var needed = alone ? "yes" : Refused(kind, Without(example, f.Pointer)).Any(r => r == f.Pointer) ? "with others" : "";
            return (f.Path, f.Type, needed, f.Meaning);
        });
    }

    private static IEnumerable<(string Path, string Pointer, string Type, string Meaning, bool InList)> Walk(Type type, string path, string pointer, JsonNode? example)
    {
        foreach (var property in type.GetProperties().Where(p => p.GetMethod is { IsStatic: false } && p.Name != "EqualityContract"))
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            var of = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            var item = of.IsGenericType ? of.GetGenericArguments()[0] : null;
            item = item is null ? null : Nullable.GetUnderlyingType(item) ?? item;
            yield return (path + name, $"{pointer}/{name}", TypeOf(property, of, item), Meanings.Of(property) ?? throw new InvalidOperationException($"{type.Name}.{property.Name} says nowhere what it means"), path.Contains('[', StringComparison.Ordinal));
            if (item is null || item.Namespace?.StartsWith("FleetWake", StringComparison.Ordinal) != true || item.IsEnum) continue;
            foreach (var field in Walk(item, $"{path}{name}[].", $"{pointer}/{name}/0", example)) yield return field;
        }
    }

    private static string TypeOf(PropertyInfo property, Type type, Type? item)
    {
        if (property.GetCustomAttribute<OneOfAttribute>() is { } words)
            return (item is null ? "" : "list of ") + string.Join(", ", Words.All(words.Words).Select(w => $"`{w}`"));
        if (item is not null) return item == typeof(string) ? "list of texts" : item == typeof(Guid) ? "list of UUIDs" : item == typeof(double) || item == typeof(int) ? "list of numbers" : "list";
        return type == typeof(string) ? "text" : type == typeof(bool) ? "true or false" : type == typeof(Guid) ? "UUID"
            : type == typeof(int) || type == typeof(long) ? "whole number" : type == typeof(double) || type == typeof(decimal) ? "number"
            : type == typeof(DateOnly) ? "date" : type == typeof(Stamp) ? "entry" : throw new InvalidOperationException($"{type} has no name in the docs yet");
    }

    /// <summary>The fields that a record is refused for.</summary>
    private static HashSet<string> Refused(RecordKind kind, JsonObject record)
    {
        var command = (ICommand)record.Deserialize(kind.CommandType, LogbookJson.Options)!;
        return kind.Decide(command, Now) is Decision.Refuse refused ? [.. refused.Refusals.Select(r => r.Field)] : [];
    }

    private static JsonObject Without(JsonObject example, string pointer)
    {
        var copy = example.DeepClone().AsObject();
        JsonNode? at = copy;
        var steps = pointer.Split('/')[1..];
        foreach (var step in steps[..^1])
            at = at is JsonArray list ? list.Count > 0 ? list[int.Parse(step)] : null : at?[step];
        if (at is JsonObject holder) holder.Remove(steps[^1]);
        return copy;
    }

    private static JsonObject ExampleOf(RecordKind kind) =>
        JsonSerializer.SerializeToNode(kind.Example, kind.CommandType, LogbookJson.Options)!.AsObject();

    /// <summary>What a record is about: the stream that its main fact lies on.</summary>
    private static string About(RecordKind kind) =>
        kind.Name == "retracted" ? "what it takes back"
        : kind.Decide(kind.Example, Now) is Decision.Keep keep ? keep.Facts[0].Stream.Split('/')[0] : throw new InvalidOperationException($"the example of {kind.Name} is refused");

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
