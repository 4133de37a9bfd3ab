using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Parts;

namespace FleetWake.Logbook.Duties;

/// <summary>A prop nut was tightened again to its torque. A null means that nobody said.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Torque">Torque reached, in <paramref name="TorqueUnit"/>.</param>
/// <param name="TorqueUnit">Unit of the torque.</param>
/// <param name="NewPin">A new pin, washer or nut was fitted.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("nut_retorqued", 1)]
public sealed record NutRetorqued(Entry Entry, string Boat, Position Position, double? Torque, TorqueUnit? TorqueUnit, bool? NewPin, double? Hours) : IMetered;

/// <summary>Records a re-torque.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Torque">Torque reached, in the unit given.</param>
/// <param name="TorqueUnit">Unit of the torque.</param>
/// <param name="NewPin">A new pin, washer or nut was fitted: one is new each time.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
/// <param name="Parts">Small parts used.</param>
public sealed record RetorqueNut(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    double? Torque = null,
    [property: OneOf(typeof(TorqueUnit))] string? TorqueUnit = null,
    bool? NewPin = null,
    double? Hours = null,
    IReadOnlyList<PartSent>? Parts = null) : ICommand<RetorqueNut>
{
    /// <inheritdoc/>
    public static string Kind => "nut_retorqued";

    /// <inheritdoc/>
    public static RetorqueNut Example =>
        new(Examples.At(301, "2026-05-02T17:00:00"), Examples.Boat, "single", 34, "newton_metre", true, 218, [new PartSent("pin-3x25", 1, "north-pier")]);

    /// <inheritdoc/>
    public static string Summary => "Records that a prop nut was tightened again to its torque.";

    /// <inheritdoc/>
    public static Decision Decide(RetorqueNut command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var (torque, unit) = check.Torque(command.Torque, command.TorqueUnit, "/torque");
        var hours = check.Hours(command.Hours, "/hours");
        var parts = PartsUsed.Read(check, command.Parts, "/parts");
        return check.Decide(() => new Decision.Keep(
            [
                new Placed(StreamName.Boat(boat), new NutRetorqued(entry!, boat, position, torque, unit, command.NewPin, hours)),
                .. PartsUsed.Place(entry!, parts, boat, position),
            ],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
