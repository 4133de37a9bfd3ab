using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Mountings;

/// <summary>Records that a prop was fitted, with as much of the mounting sheet as was filled in.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Prop">The prop's tag.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
/// <param name="SealClearOfLine">Seal and shaft clear of line and debris.</param>
/// <param name="ShaftGreased">Shaft greased.</param>
/// <param name="HardwareInOrder">Thrust washer and hardware in their order.</param>
/// <param name="Torque">Torque reached, in the unit given.</param>
/// <param name="TorqueUnit">Unit of the torque.</param>
/// <param name="SlotsAdvanced">Slots the nut was tightened on to line up, 0 to 10.</param>
/// <param name="NewCotterPin">A new cotter pin was fitted.</param>
/// <param name="Parts">Small parts used.</param>
public sealed record MountProp(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    string? Prop,
    double? Hours = null,
    bool? SealClearOfLine = null,
    bool? ShaftGreased = null,
    bool? HardwareInOrder = null,
    double? Torque = null,
    [property: OneOf(typeof(TorqueUnit))] string? TorqueUnit = null,
    int? SlotsAdvanced = null,
    bool? NewCotterPin = null,
    IReadOnlyList<PartSent>? Parts = null) : ICommand<MountProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_mounted";

    /// <inheritdoc/>
    public static MountProp Example => new(Examples.At(8, "2026-05-01T10:00:00"), Examples.Boat, "single", Examples.Prop, 212, true, true, true, 34, "newton_metre", 1, true);

    /// <inheritdoc/>
    public static string Summary => "Records that a prop was fitted, with the mounting sheet.";

    /// <inheritdoc/>
    public static Decision Decide(MountProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var prop = check.Id(command.Prop, "/prop");
        var hours = check.Hours(command.Hours, "/hours");
        var (torque, unit) = check.Torque(command.Torque, command.TorqueUnit, "/torque");
        if (command.SlotsAdvanced is < 0)
            check.Refuse("/slotsAdvanced", "backed_off", "a nut is never backed off to line up: tighten it on to the next slot and record that");
        else
            check.Maybe(command.SlotsAdvanced, "/slotsAdvanced", 0, 10, "slots");
        var parts = PartsUsed.Read(check, command.Parts, "/parts");
        return check.Decide(() => new Decision.Keep(
            [
                new Placed(StreamName.Boat(boat), new PropMounted(
                    entry!, boat, position, prop, hours, command.SealClearOfLine, command.ShaftGreased, command.HardwareInOrder,
                    torque, unit, command.SlotsAdvanced, command.NewCotterPin)),
                new Placed(StreamName.Prop(prop), new PropIssued(entry!, prop, boat, position)),
                .. PartsUsed.Place(entry!, parts, boat, position),
            ],
            [new Reference("/boat", StreamName.Boat(boat)), new Reference("/prop", StreamName.Prop(prop))]));
    }
}
