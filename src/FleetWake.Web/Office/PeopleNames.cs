using FleetWake.Reports.Pictures;
using FleetWake.Store.People;

namespace FleetWake.Web.Office;

/// <summary>Names of people: records hold ids only.</summary>
internal static class PeopleNames
{
    /// <summary>Names by id, of those who left too; somebody whose name was erased has none.</summary>
    public static async Task<IReadOnlyDictionary<string, string>> NamesAsync(this FleetPeople people, string @operator, CancellationToken ct) =>
        (await people.AllAsync(@operator, ct)).GroupBy(p => p.Person, StringComparer.Ordinal).ToDictionary(p => p.Key, p => Phrases.Plain(p.First().Name), StringComparer.Ordinal);
}
