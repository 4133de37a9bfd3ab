using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Season;

/// <summary>A boat left the fleet for good. Nothing is due on it any more; its record stays.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Why">Why.</param>
[StoredAs("boat_retired", 1)]
public sealed record BoatRetired(Entry Entry, string Boat, BoatRetirement Why) : IFact;

/// <summary>Why a boat left the fleet.</summary>
public enum BoatRetirement
{
    /// <summary>Sold.</summary>
    Sold,

    /// <summary>Scrapped.</summary>
    Scrapped,

    /// <summary>Lost.</summary>
    Lost,
}

/// <summary>Records that a boat left the fleet for good.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Why">Why.</param>
public sealed record RetireBoat(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(BoatRetirement))] string? Why) : ICommand<RetireBoat>
{
    /// <inheritdoc/>
    public static string Kind => "boat_retired";

    /// <inheritdoc/>
    public static RetireBoat Example => new(Examples.At(308, "2026-11-20T12:00:00"), Examples.Boat, "sold");

    /// <inheritdoc/>
    public static string Summary => "Records that a boat left the fleet for good.";

    /// <inheritdoc/>
    public static Decision Decide(RetireBoat command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var why = check.OneOf<BoatRetirement>(command.Why, "/why");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new BoatRetired(entry!, boat, why))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
