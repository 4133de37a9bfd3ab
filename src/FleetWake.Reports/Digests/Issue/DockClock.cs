using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>The clock by which day and night are reckoned for the readers of a dock.</summary>
public static class DockClock
{
    /// <summary>
    /// The zone of a dock: as the operator told it, else as its boats have it, most of them; that of the office for readers of the whole
    /// fleet, and where nobody told one.
    /// </summary>
    /// <param name="dock">The dock; null for the whole fleet.</param>
    /// <param name="docks">Docks on record.</param>
    /// <param name="boats">The fleet's boats.</param>
    /// <param name="office">Zone of the office.</param>
    public static TimeZoneInfo Of(string? dock, IReadOnlyList<DockCard> docks, IEnumerable<BoatFinding> boats, TimeZoneInfo office)
    {
        if (dock is null) return office;
        var told = docks.FirstOrDefault(d => d.Dock == dock)?.Zone
            ?? boats.Where(b => b.Registered?.Dock == dock && b.Retired is null).GroupBy(b => b.Registered!.DockZone, StringComparer.Ordinal)
                .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault()?.Key;
        return told is not null && TimeZoneInfo.TryFindSystemTimeZoneById(told, out var zone) ? zone : office;
    }
}
