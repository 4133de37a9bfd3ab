using System.Collections.Frozen;
using System.Text.Json;

namespace FleetWake.Web.Frame;

/// <summary>
/// The words on pages, from one file a language (<c>Texts/en.json</c>): sections of keys, with places written
/// <c>{name}</c>. Sentences about a boat are the logbook's own and stand in no such file.
/// </summary>
public sealed class PageTexts
{
    private readonly FrozenDictionary<string, string> words;

    private PageTexts(string language, FrozenDictionary<string, string> words) => (Language, this.words) = (language, words);

    /// <summary>English, the only language so far.</summary>
    public static PageTexts English { get; } = Read("en");

    /// <summary>BCP 47 tag of the language.</summary>
    public string Language { get; }

    /// <summary>Every key, e.g. <c>fleet.title</c>.</summary>
    public IEnumerable<string> Keys => words.Keys;

    /// <summary>The words of a key; throws when there are none, so that a wrong key fails its page's first test.</summary>
    public string this[string key] =>
        words.TryGetValue(key, out var text) ? text : throw new ArgumentException($"Texts/{Language}.json has no \"{key}\".", nameof(key));

    /// <summary>The words of a key with its places filled.</summary>
    public string With(string key, params (string Name, object? Value)[] places)
    {
        var text = this[key];
        foreach (var (name, value) in places) text = text.Replace($"{{{name}}}", Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
        return text;
    }

    /// <summary>The sections whose names begin so, for a page that words itself in the browser.</summary>
    public IReadOnlyDictionary<string, string> Sections(params string[] beginnings) =>
        words.Where(w => beginnings.Any(b => w.Key.StartsWith(b + ".", StringComparison.Ordinal))).OrderBy(w => w.Key, StringComparer.Ordinal)
            .ToDictionary(w => w.Key, w => w.Value, StringComparer.Ordinal);

    private static PageTexts Read(string language)
    {
        using var stream = typeof(PageTexts).Assembly.GetManifestResourceStream($"texts/{language}.json")!;
        var sections = JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, string>>>(stream)!;
        return new PageTexts(language, sections.SelectMany(s => s.Value.Select(w => KeyValuePair.Create($"{s.Key}.{w.Key}", w.Value))).ToFrozenDictionary(StringComparer.Ordinal));
    }
}
