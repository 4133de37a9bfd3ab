using FleetWake.Logbook;
using FleetWake.Logbook.Office;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;

namespace FleetWake.Web.Dock;

/// <summary>An operator's docks: those that it opened, and those that its boats name.</summary>
internal sealed class DockPlaces(FleetReading reading, FleetOperators operators)
{
    /// <summary>Every dock, by name.</summary>
    public async Task<IReadOnlyList<DockPlace>> AllAsync(string @operator, CancellationToken ct) =>
        Of((await reading.OfficeAsync(@operator, ct)).Record, (await reading.FindingsAsync(@operator, ct)).Select(f => f.Finding));

    /// <summary>A dock; one that nobody told of lies in the operator's zone and is called by its id.</summary>
    public async Task<DockPlace> FindAsync(string @operator, string dock, CancellationToken ct) =>
        (await AllAsync(@operator, ct)).FirstOrDefault(d => d.Id == dock) ?? new DockPlace(dock, dock, (await operators.FindAsync(@operator, ct))!.Zone, null, null);

    /// <summary>The docks by what is known already.</summary>
    public static IReadOnlyList<DockPlace> Of(OfficeRecord office, IEnumerable<Logbook.Findings.BoatFinding> findings)
    {
        var opened = office.Docks.Select(d => new DockPlace(d.Dock, d.Name, d.Zone, d.Water, d.Bottom)).ToList();
        var named = findings.Select(f => f.Registered).OfType<Logbook.Findings.BoatCard>().GroupBy(b => b.Dock, StringComparer.Ordinal)
            .Where(g => !opened.Exists(d => d.Id == g.Key))
            .Select(g => new DockPlace(g.Key, g.Key, g.First().DockZone, g.First().Water, g.Select(b => b.Bottom).FirstOrDefault(b => b is not null)));
        return [.. opened.Concat(named).OrderBy(d => d.Name, StringComparer.OrdinalIgnoreCase)];
    }
}

/// <summary>A dock.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Zone">Its IANA zone.</param>
/// <param name="Water">The water there, when told.</param>
/// <param name="Bottom">The bottom there, when told.</param>
public sealed record DockPlace(string Id, string Name, string Zone, WaterType? Water, BottomKind? Bottom);
