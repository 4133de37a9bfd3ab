using FleetWake.Logbook.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.People;

namespace FleetWake.Reports.Digests;

/// <summary>What ids are called, and where the office is.</summary>
/// <param name="Docks">Names of docks by id.</param>
/// <param name="People">Names of people by id.</param>
/// <param name="Office">Address of the web room; null when it is not set.</param>
public sealed record MailNames(IReadOnlyDictionary<string, string> Docks, IReadOnlyDictionary<string, string> People, Uri? Office)
{
    /// <summary>No names: ids stand for themselves.</summary>
    public static MailNames None { get; } = new(new Dictionary<string, string>(), new Dictionary<string, string>(), null);

    /// <summary>The names that a digest of some boats needs.</summary>
    public static async Task<MailNames> OfAsync(string @operator, IEnumerable<BoatFinding> boats, OfficeState office, FleetPeople people, Uri? pages, CancellationToken ct) => new(
        boats.Select(f => f.Registered?.Dock).OfType<string>().Distinct(StringComparer.Ordinal).ToDictionary(d => d, office.DockName, StringComparer.Ordinal),
        (await people.AllAsync(@operator, ct)).GroupBy(p => p.Person, StringComparer.Ordinal).ToDictionary(p => p.Key, p => p.First().Name, StringComparer.Ordinal),
        pages);

    /// <summary>Name of a dock, or its id.</summary>
    public string Dock(string id) => Docks.GetValueOrDefault(id, id);

    /// <summary>Name of a person, or the id.</summary>
    public string Person(string id) => People.GetValueOrDefault(id, id);
}
