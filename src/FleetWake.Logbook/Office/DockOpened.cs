using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Office;

/// <summary>An operator opened a dock, or told of it anew: a later record replaces an earlier one as a whole.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Zone">Its IANA zone.</param>
/// <param name="Water">The water there.</param>
/// <param name="Bottom">The bottom there.</param>
[StoredAs("dock_opened", 1)]
public sealed record DockOpened(Entry Entry, string Dock, string Name, string Zone, WaterType? Water, BottomKind? Bottom) : IFact;

/// <summary>Opens a dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Zone">Its IANA zone.</param>
/// <param name="Water">The water there.</param>
/// <param name="Bottom">The bottom there.</param>
public sealed record OpenDock(
    Stamp? Entry,
    string? Dock,
    string? Name,
    string? Zone,
    [property: OneOf(typeof(WaterType))] string? Water = null,
    [property: OneOf(typeof(BottomKind))] string? Bottom = null) : ICommand<OpenDock>
{
    /// <inheritdoc/>
    public static string Kind => "dock_opened";

    /// <inheritdoc/>
    public static OpenDock Example => new(Examples.At(240, "2026-05-01T07:00:00"), "north-pier", "North Pier", Examples.Zone, "salt", "rock");

    /// <inheritdoc/>
    public static string Summary => "Tells of a dock: its name, zone, water and bottom.";

    /// <inheritdoc/>
    public static Decision Decide(OpenDock command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var dock = check.Id(command.Dock, "/dock");
        var name = check.Name(command.Name, "/name");
        var zone = check.Zone(command.Zone, "/zone");
        var water = check.MaybeOneOf<WaterType>(command.Water, "/water");
        var bottom = check.MaybeOneOf<BottomKind>(command.Bottom, "/bottom");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Operator, new DockOpened(entry!, dock, name, zone!.Id, water, bottom))], []));
    }
}
