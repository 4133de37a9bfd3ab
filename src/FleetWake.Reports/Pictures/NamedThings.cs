using System.Text.RegularExpressions;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>Names of boats and models of engines, for sentences of the logbook's, which calls both by id.</summary>
/// <param name="boats">Names of boats by id.</param>
/// <param name="engines">Models of engines by id.</param>
public sealed partial class NamedThings(IReadOnlyDictionary<string, string> boats, IReadOnlyDictionary<string, string> engines)
{
    /// <summary>Ids as they are.</summary>
    public static NamedThings None { get; } = new(new Dictionary<string, string>(), new Dictionary<string, string>());

    /// <summary>The names that findings tell.</summary>
    /// <param name="findings">Boats, each once.</param>
    public static NamedThings Of(IEnumerable<BoatFinding> findings)
    {
        var all = findings.ToList();
        return new NamedThings(
            all.ToDictionary(f => f.Boat, f => Phrases.Plain(f.DisplayName()), StringComparer.Ordinal),
            all.SelectMany(f => f.Positions).Select(p => p.Engine).Where(e => e?.Model is not null)
                .GroupBy(e => e!.Engine, StringComparer.Ordinal).ToDictionary(e => e.Key, e => Phrases.Plain(e.First()!.Model!), StringComparer.Ordinal));
    }

    /// <summary>The name of a boat.</summary>
    /// <param name="id">Its id.</param>
    public string Boat(string id) => boats.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>Model and id: two engines of a boat are often of one model.</summary>
    /// <param name="id">Its id.</param>
    public string Engine(string id) => engines.GetValueOrDefault(id) is { } model ? $"{model} ({Phrases.Plain(id)})" : Phrases.Plain(id);

    /// <summary>
    /// A sentence of the logbook's, whose ids are given their names: "engine e-tern", "on tern on 2026-05-01". Only where such
    /// a word stands before one, for an id may be any word.
    /// </summary>
    /// <param name="sentence">The sentence.</param>
    public string Say(string sentence) => Places().Replace(sentence, m => m.Groups["what"].Value is var what && m.Groups["id"].Value is var id
        && (what[0] != ' ' ? engines.ContainsKey(id) ? Engine(id) : null : boats.GetValueOrDefault(id)) is { } name ? m.Value[..^id.Length] + name : m.Value);

    [GeneratedRegex(@"(?<what>ngine | (?:on|of|to) |meter of )(?<id>[A-Za-z0-9][A-Za-z0-9._-]{0,39})(?=[ ,.;:(]|$)", RegexOptions.CultureInvariant)]
    private static partial Regex Places();
}
