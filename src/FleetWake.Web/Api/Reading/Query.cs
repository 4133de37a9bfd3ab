using System.Globalization;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using Microsoft.OpenApi;

namespace FleetWake.Web.Api.Reading;

/// <summary>Makes the parameters of queries.</summary>
public static class Query
{
    /// <summary>Boats of one dock.</summary>
    public static QueryField<string> Dock { get; } = Id("dock", "Only of boats whose home dock this is.");

    /// <summary>One boat.</summary>
    public static QueryField<string> Boat { get; } = Id("boat", "Only of this boat.");

    /// <summary>One engine position.</summary>
    public static QueryField<Logbook.Position?> Position { get; } = Word<Logbook.Position>("position", "Only at this engine position.");

    /// <summary>An id of a boat, engine, prop, dock or part.</summary>
    public static QueryField<string> Id(string name, string meaning) =>
        new(name, meaning, new OpenApiSchema { Type = JsonSchemaType.String }, text =>
        {
            var check = new Check();
            var id = check.Id(text, name);
            return check.Decide(() => new Decision.Keep([], [])) is Decision.Refuse refused ? (null, refused.Refusals[0]) : (id, null);
        });

    /// <summary>The beginning of a name or id, upper or lower case.</summary>
    public static QueryField<string> Beginning(string meaning) =>
        new("q", meaning, new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = 80 }, text => text.Length <= 80
            ? (text, null)
            : (null, new Refusal("q", "too_long", "give at most 80 letters")));

    /// <summary>A calendar date.</summary>
    public static QueryField<DateOnly?> Date(string name, string meaning) =>
        new(name, meaning, new OpenApiSchema { Type = JsonSchemaType.String, Format = "date" }, text =>
            DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
                ? (date, null)
                : (null, new Refusal(name, "not_a_date", $"give the {name} as in 2026-05-03")));

    /// <summary>A word of an enumeration.</summary>
    public static QueryField<T?> Word<T>(string name, string meaning)
        where T : struct, Enum =>
        new(name, meaning, Listing(Words.All(typeof(T))), text =>
            Words.TryRead<T>(text, out var value) ? (value, null) : (null, Unknown(name, text, Words.All(typeof(T)))));

    /// <summary>One of some words.</summary>
    public static QueryField<string> OneOf(string name, string meaning, IReadOnlyCollection<string> words) =>
        new(name, meaning, Listing(words), text => words.Contains(text, StringComparer.Ordinal) ? (text, null) : (null, Unknown(name, text, words)));

    /// <summary>Yes or no.</summary>
    public static QueryField<bool?> Flag(string name, string meaning) =>
        new(name, meaning, new OpenApiSchema { Type = JsonSchemaType.Boolean }, text => text switch
        {
            "true" => (true, null),
            "false" => (false, null),
            _ => (null, new Refusal(name, "not_true_or_false", $"give {name}=true or {name}=false")),
        });

    /// <summary>A whole number within limits.</summary>
    public static QueryField<int?> Whole(string name, string meaning, int least, int most, int usual) =>
        new(name, meaning, new OpenApiSchema { Type = JsonSchemaType.Integer, Minimum = $"{least}", Maximum = $"{most}", Default = usual }, text =>
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
                ? (number, null)
                : (null, new Refusal(name, "out_of_range", $"give a whole number from {least} to {most}")));

    private static OpenApiSchema Listing(IReadOnlyCollection<string> words) =>
        new() { Type = JsonSchemaType.String, Enum = [.. words.Select(w => (JsonNode)w)] };

    private static Refusal Unknown(string name, string text, IReadOnlyCollection<string> words) =>
        new(name, "unknown_word", $"\"{(text.Length <= 40 ? text : text[..40] + "…")}\" is not known here: give one of {string.Join(", ", words)}");
}
