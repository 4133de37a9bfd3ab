using FleetWake.Logbook.Entries;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Devices;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office;

/// <summary>Names of what records call by id, for a page that people read.</summary>
/// <param name="things">Names of boats, and models of engines that hang somewhere.</param>
/// <param name="docks">Names of docks.</param>
/// <param name="rules">What is due by a rule.</param>
/// <param name="devices">Names of phones.</param>
public sealed class Namings(
    NamedThings things, IReadOnlyDictionary<string, string> docks, IReadOnlyDictionary<string, string> rules, IReadOnlyDictionary<string, string> devices)
{
    /// <summary>Ids as they are.</summary>
    public static Namings None { get; } = new(
        NamedThings.None, new Dictionary<string, string>(), new Dictionary<string, string>(), new Dictionary<string, string>());

    /// <summary>The names of an operator's boats, docks, rules, engines and phones.</summary>
    public static async Task<Namings> OfAsync(FleetReading reading, FleetDevices phones, string tenant, CancellationToken ct) =>
        Of(await reading.OfficeAsync(tenant, ct), await reading.FindingsAsync(tenant, ct), await phones.OfAsync(tenant, ct));

    /// <summary>The same of what is at hand.</summary>
    public static Namings Of(OfficeState office, IReadOnlyList<StoredFinding> findings, IReadOnlyList<DeviceCard>? phones = null) => new(
        NamedThings.Of(findings.Select(f => f.Finding)),
        office.Record.Docks.ToDictionary(d => d.Dock, d => Phrases.Plain(d.Name), StringComparer.Ordinal),
        office.Policy.Rules.ToDictionary(r => r.Id, r => Phrases.Plain(r.Name), StringComparer.Ordinal),
        (phones ?? []).ToDictionary(d => d.Id, d => Phrases.Plain(d.Name), StringComparer.Ordinal));

    /// <summary>The name of a boat.</summary>
    public string Boat(string id) => things.Boat(id);

    /// <summary>The name of a dock.</summary>
    public string Dock(string id) => docks.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>What is due by a rule.</summary>
    public string Rule(string id) => rules.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>Model and id: two engines of a boat are often of one model.</summary>
    public string Engine(string id) => things.Engine(id);

    /// <summary>The name of a phone.</summary>
    public string Device(string id) => id == Arrival.Office ? PageTexts.English["common.at-office"] : devices.GetValueOrDefault(id) ?? Phrases.Plain(id);

    /// <summary>A sentence of the logbook's, whose ids are given their names.</summary>
    public string Say(string sentence) => things.Say(sentence);
}
