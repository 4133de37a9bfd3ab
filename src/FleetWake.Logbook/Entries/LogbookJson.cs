using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace FleetWake.Logbook.Entries;

/// <summary>The JSON that records and findings are written in; golden files pin it.</summary>
public static class LogbookJson
{
    /// <summary>Every fact with its stored name, found by its attribute. Throws when a fact has none or two share one.</summary>
    public static IReadOnlyDictionary<Type, string> StoredNames { get; } = ReadStoredNames();

    /// <summary>The options: camel case, words in lower snake case, a fact held as <see cref="IFact"/> named by <c>fact</c>.</summary>
    public static JsonSerializerOptions Options { get; } = Configure(new JsonSerializerOptions());

    /// <summary>Gives other options the same form.</summary>
    public static JsonSerializerOptions Configure(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.PropertyNameCaseInsensitive = false;
        options.NumberHandling = JsonNumberHandling.Strict;

        // PostgreSQL's jsonb keeps no member order, so the name of a fact may stand anywhere in it.
        options.AllowOutOfOrderMetadataProperties = true;
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false));
        // A resolver of its own: the web framework hands every host the same one, and one may not be changed once used.
        options.TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { NameFacts } };
        return options;
    }

    private static void NameFacts(JsonTypeInfo info)
    {
        if (info.Type != typeof(IFact)) return;
        info.PolymorphismOptions = new JsonPolymorphismOptions { TypeDiscriminatorPropertyName = "fact" };
        foreach (var (type, name) in StoredNames)
            info.PolymorphismOptions.DerivedTypes.Add(new JsonDerivedType(type, name));
    }

    private static Dictionary<Type, string> ReadStoredNames()
    {
        var names = new Dictionary<Type, string>();
        foreach (var type in typeof(IFact).Assembly.GetTypes().Where(t => t.IsAssignableTo(typeof(IFact)) && t is { IsAbstract: false, IsInterface: false }))
        {
            var attribute = type.GetCustomAttribute<StoredAsAttribute>()
                ?? throw new InvalidOperationException($"{type.Name} is a fact without a stored name: give it [StoredAs(\"past_tense\", 1)].");
            names.Add(type, attribute.StoredName);
        }

        var twice = names.GroupBy(n => n.Value, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? names
            : throw new InvalidOperationException($"{string.Join(" and ", twice.Select(t => t.Key.Name))} share the stored name {twice.Key}.");
    }
}
