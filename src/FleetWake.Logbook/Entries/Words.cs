using System.Collections.Concurrent;
using System.Text.Json;

namespace FleetWake.Logbook.Entries;

/// <summary>How enumerations are written everywhere: lower snake case.</summary>
public static class Words
{
    private static readonly ConcurrentDictionary<Type, Dictionary<string, Enum>> Known = new();

    /// <summary>The word for a value, e.g. <c>take_off</c>.</summary>
    public static string Of(Enum value) => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    /// <summary>The word for a value as prose, e.g. <c>take off</c>.</summary>
    public static string Prose(Enum value) => Of(value).Replace('_', ' ');

    /// <summary>All words of an enumeration, in its order.</summary>
    public static IReadOnlyCollection<string> All(Type words) => Table(words).Keys;

    /// <summary>The value of a word; false when there is none.</summary>
    public static bool TryRead<T>(string word, out T value)
        where T : struct, Enum
    {
        var found = Table(typeof(T)).TryGetValue(word, out var any);
        value = found ? (T)any! : default;
        return found;
    }

    private static Dictionary<string, Enum> Table(Type words) =>
        Known.GetOrAdd(words, t => Enum.GetValues(t).Cast<Enum>().ToDictionary(Of, StringComparer.Ordinal));
}
