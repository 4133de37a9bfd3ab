using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>A boat has a new home dock, or another water or bottom under it there. The latest home counts.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Dock">Id of its home dock.</param>
/// <param name="DockZone">IANA zone of the home dock; due dates are this dock's calendar dates from then on.</param>
/// <param name="Water">Water it works in; null when it stays as it was.</param>
/// <param name="Bottom">Bottom under that water; null when it stays as it was.</param>
[StoredAs("boat_rehomed", 1)]
public sealed record BoatRehomed(Entry Entry, string Boat, string Dock, string DockZone, WaterType? Water, BottomKind? Bottom) : IFact;

/// <summary>Gives a boat a new home dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Dock">Id of its home dock.</param>
/// <param name="DockZone">IANA zone of the home dock.</param>
/// <param name="Water">Water it works in; left out when it stays as it was.</param>
/// <param name="Bottom">Bottom under that water; left out when it stays as it was.</param>
public sealed record RehomeBoat(
    Stamp? Entry,
    string? Boat,
    string? Dock,
    string? DockZone,
    [property: OneOf(typeof(WaterType))] string? Water = null,
    [property: OneOf(typeof(BottomKind))] string? Bottom = null) : ICommand<RehomeBoat>
{
    /// <inheritdoc/>
    public static string Kind => "boat_rehomed";

    /// <inheritdoc/>
    public static RehomeBoat Example => new(Examples.At(101, "2026-09-28T09:00:00"), Examples.Boat, "south-quay", Examples.Zone, "brackish", "gravel");

    /// <inheritdoc/>
    public static string Summary => "Gives a boat a new home dock, with its water and bottom.";

    /// <inheritdoc/>
    public static Decision Decide(RehomeBoat command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var dock = check.Id(command.Dock, "/dock");
        var zone = check.Zone(command.DockZone, "/dockZone");
        var water = check.MaybeOneOf<WaterType>(command.Water, "/water");
        var bottom = check.MaybeOneOf<BottomKind>(command.Bottom, "/bottom");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new BoatRehomed(entry!, boat, dock, zone!.Id, water, bottom))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
