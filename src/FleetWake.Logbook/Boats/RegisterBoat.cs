using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>Registers a boat.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Dock">Id of its home dock.</param>
/// <param name="DockZone">IANA zone of the home dock.</param>
/// <param name="Water">Water it works in.</param>
/// <param name="Positions">Its engine positions, 1 to 4.</param>
public sealed record RegisterBoat(
    Stamp? Entry,
    string? Boat,
    string? Name,
    string? Dock,
    string? DockZone,
    [property: OneOf(typeof(WaterType))] string? Water,
    [property: OneOf(typeof(Position))] IReadOnlyList<string>? Positions) : ICommand<RegisterBoat>
{
    /// <inheritdoc/>
    public static string Kind => "boat_registered";

    /// <inheritdoc/>
    public static RegisterBoat Example => new(Examples.At(1, "2026-05-01T08:00:00"), Examples.Boat, "Linnet", "north-pier", Examples.Zone, "salt", ["single"]);

    /// <inheritdoc/>
    public static string Summary => "Registers a boat with its home dock, water and engine positions.";

    /// <inheritdoc/>
    public static Decision Decide(RegisterBoat command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var name = check.Name(command.Name, "/name");
        var dock = check.Id(command.Dock, "/dock");
        var zone = check.Zone(command.DockZone, "/dockZone");
        var water = check.OneOf<WaterType>(command.Water, "/water");
        var named = check.List(command.Positions, "/positions", 1, 4);
        var positions = named.Select((word, i) => check.OneOf<Position>(word, $"/positions/{i}")).ToList();
        check.Once(named, "/positions", "name each position once");
        if (named.Distinct(StringComparer.Ordinal).Count() > 1 && named.Contains(Words.Of(Position.Single)))
            check.Refuse("/positions", "single_of_several", "\"single\" stands alone: use port, starboard and centre for several engines");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new BoatRegistered(entry!, boat, name, dock, zone!.Id, water, positions))],
            []));
    }
}
