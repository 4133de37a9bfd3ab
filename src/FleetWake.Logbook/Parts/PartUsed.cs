using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Parts;

/// <summary>Small parts were used: told by itself, or with a mounting, a re-torque or a duty, whose entry id it then shares.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Part">Id of the part.</param>
/// <param name="Dock">Id of the dock whose stock they came from; null when nobody said.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Boat">The boat they were used on, if on one.</param>
/// <param name="Position">The position on it.</param>
[StoredAs("part_used", 1)]
public sealed record PartUsed(Entry Entry, string Part, string? Dock, int Quantity, string? Boat, Position? Position) : IFact;

/// <summary>Records that small parts were used.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Part">Id of the part.</param>
/// <param name="Quantity">How many, 1 to 10000.</param>
/// <param name="Dock">Id of the dock whose stock they came from.</param>
/// <param name="Boat">The boat they were used on.</param>
/// <param name="Position">The position on it.</param>
public sealed record UsePart(
    Stamp? Entry,
    string? Part,
    int? Quantity,
    string? Dock = null,
    string? Boat = null,
    [property: OneOf(typeof(Position))] string? Position = null) : ICommand<UsePart>
{
    /// <inheritdoc/>
    public static string Kind => "part_used";

    /// <inheritdoc/>
    public static UsePart Example => new(Examples.At(222, "2026-06-12T09:30:00"), "pin-3x25", 1, "north-pier", Examples.Boat, "single");

    /// <inheritdoc/>
    public static string Summary => "Records that small parts were used, and on which boat.";

    /// <inheritdoc/>
    public static Decision Decide(UsePart command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var part = check.Id(command.Part, "/part");
        var quantity = check.Whole(command.Quantity, "/quantity", 1, PartsUsed.MostPieces, "pieces");
        var dock = check.MaybeId(command.Dock, "/dock");
        var boat = check.MaybeId(command.Boat, "/boat");
        var position = check.MaybeOneOf<Position>(command.Position, "/position");
        if (command is { Position: not null, Boat: null }) check.Refuse("/boat", "missing", "missing: a position stands here without its boat");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Part(part), new PartUsed(entry!, part, dock, quantity, boat, position))],
            boat is null ? [] : [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
