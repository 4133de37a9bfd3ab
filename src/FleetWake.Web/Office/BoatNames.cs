using FleetWake.Logbook.Findings;
using FleetWake.Store.Histories;

namespace FleetWake.Web.Office;

/// <summary>Names of boats, by id.</summary>
internal static class BoatNames
{
    /// <summary>Names of some boats; one that is not registered goes by its id.</summary>
    public static async Task<IReadOnlyDictionary<string, string>> OfAsync(FleetReading reading, string tenant, IEnumerable<string> boats, CancellationToken ct)
    {
        string[] asked = [.. boats.Distinct(StringComparer.Ordinal)];
        var found = asked.Length == 0 ? [] : await reading.FindingsAsync(tenant, asked, ct);
        var names = asked.ToDictionary(b => b, b => b, StringComparer.Ordinal);
        foreach (var stored in found) names[stored.Boat] = stored.Finding.DisplayName();
        return names;
    }
}
