using FleetWake.Logbook.Entries;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Devices;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office;

/// <summary>Names of what records call by id, for a page that people read.</summary>
/// <param name="boats">Names of boats.</param>
/// <param name="docks">Names of docks.</param>
/// <param name="rules">What is due by a rule.</param>
/// <param name="engines">Models of engines that hang somewhere.</param>
/// <param name="devices">Names of phones.</param>
public sealed class Namings(
    IReadOnlyDictionary<string, string> boats, IReadOnlyDictionary<string, string> docks, IReadOnlyDictionary<string, string> rules,
    IReadOnlyDictionary<string, string> engines, IReadOnlyDictionary<string, string> devices)
{
    /// <summary>Ids as they are.</summary>
    public static Namings None { get; } = new(
        new Dictionary<string, string>(), new Dictionary<string, string>(), new Dictionary<string, string>(), new Dictionary<string, string>(), new Dictionary<string, string>());

    /// <summary>The names of an operator's boats, docks, rules, engines and phones.</summary>
    public static async Task<Namings> OfAsync(FleetReading reading, FleetDevices phones, string tenant, CancellationToken ct) =>
        Of(await reading.OfficeAsync(tenant, ct), await reading.FindingsAsync(tenant, ct), await phones.OfAsync(tenant, ct));

    /// <summary>The same of what is at hand.</summary>
    public static Namings Of(OfficeState office, IReadOnlyList<StoredFinding> findings, IReadOnlyList<DeviceCard>? phones = null) => new(
        findings.ToDictionary(f => f.Boat, f => Phrases.Plain(f.Finding.DisplayName()), StringComparer.Ordinal),
        office.Record.Docks.ToDictionary(d => d.Dock, d => Phrases.Plain(d.Name), StringComparer.Ordinal),
        office.Policy.Rules.ToDictionary(r => r.Id, r => Phrases.Plain(r.Name), StringComparer.Ordinal),
        findings.SelectMany(f => f.Finding.Positions).Select(p => p.Engine).Where(e => e?.Model is not null)
            .GroupBy(e => e!.Engine, StringComparer.Ordinal).ToDictionary(e => e.Key, e => Phrases.Plain(e.First()!.Model!), StringComparer.Ordinal),
        (phones ?? []).ToDictionary(d => d.Id, d => Phrases.Plain(d.Name), StringComparer.Ordinal));

    /// <summary>The name of a boat.</summary>
    public string Boat(string id) => boats.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>The name of a dock.</summary>
    public string Dock(string id) => docks.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>What is due by a rule.</summary>
    public string Rule(string id) => rules.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>Model and id: two engines of a boat are often of one model.</summary>
    public string Engine(string id) => engines.GetValueOrDefault(id) is { } model ? $"{model} ({Phrases.Plain(id)})" : Phrases.Plain(id);

    /// <summary>The name of a phone.</summary>
    public string Device(string id) => id == Arrival.Office ? PageTexts.English["common.at-office"] : devices.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>
    /// A sentence of the logbook's, whose ids are given their names: "engine e-tern", "on tern on 2026-05-01". Only where such
    /// a word stands before one, for an id may be any word.
    /// </summary>
    public string Say(string sentence) => Places.Replace(sentence, m => m.Groups["what"].Value is var what && m.Groups["id"].Value is var id
        && (what[0] != ' ' ? engines.ContainsKey(id) ? Engine(id) : null : boats.GetValueOrDefault(id)) is { } name ? m.Value[..^id.Length] + name : m.Value);

    private static System.Text.RegularExpressions.Regex Places { get; } =
        new(@"(?<what>ngine | (?:on|of|to) |meter of )(?<id>[A-Za-z0-9][A-Za-z0-9._-]{0,39})(?=[ ,.;:(]|$)", System.Text.RegularExpressions.RegexOptions.CultureInvariant | System.Text.RegularExpressions.RegexOptions.Compiled);
}
