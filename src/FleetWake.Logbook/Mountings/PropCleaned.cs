using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mountings;

/// <summary>A fitted prop was cleaned of growth. What it showed before no longer stands for it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
[StoredAs("prop_cleaned", 1)]
public sealed record PropCleaned(Entry Entry, string Boat, Position Position) : IAtPosition;

/// <summary>Records that a fitted prop was cleaned.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
public sealed record CleanProp(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position) : ICommand<CleanProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_cleaned";

    /// <inheritdoc/>
    public static CleanProp Example => new(Examples.At(103, "2026-07-06T17:20:00"), Examples.Boat, "single");

    /// <inheritdoc/>
    public static string Summary => "Records that a fitted prop was cleaned of growth; its trials get a new baseline.";

    /// <inheritdoc/>
    public static Decision Decide(CleanProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new PropCleaned(entry!, boat, position))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
