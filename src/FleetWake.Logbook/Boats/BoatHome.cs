using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>Where a boat is at home.</summary>
/// <param name="Dock">Id of its dock.</param>
/// <param name="DockZone">IANA zone of the dock.</param>
/// <param name="Water">Water it works in.</param>
/// <param name="Bottom">Bottom under that water, when told.</param>
public sealed record BoatHome(string Dock, string DockZone, WaterType Water, BottomKind? Bottom)
{
    /// <summary>The home by a boat's registration and what has moved it since, in the order of things.</summary>
    internal static BoatHome? Of(BoatRegistered? registered, IEnumerable<IFact> facts) => registered is null
        ? null
        : facts.OfType<BoatRehomed>().Aggregate(
            new BoatHome(registered.Dock, registered.DockZone, registered.Water, null),
            (home, moved) => new BoatHome(moved.Dock, moved.DockZone, moved.Water ?? home.Water, moved.Bottom ?? (moved.Dock == home.Dock ? home.Bottom : null)));
}
