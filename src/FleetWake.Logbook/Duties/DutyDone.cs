using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;

namespace FleetWake.Logbook.Duties;

/// <summary>A duty was done that no record of its own tells of. What has one (an inspection, a re-torque, a service) is done by that record alone.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position; null when it was done at every one.</param>
/// <param name="Rule">Id of the rule by which it was due.</param>
/// <param name="Hours">Hour-meter reading of the engine at the position [h], when read.</param>
[StoredAs("duty_done", 1)]
public sealed record DutyDone(Entry Entry, string Boat, Position? Position, string Rule, double? Hours) : IFact;

/// <summary>Records that a duty was done.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Rule">Id of the rule by which it was due.</param>
/// <param name="Position">The position; left out when it was done at every one.</param>
/// <param name="Hours">Hour-meter reading of the engine at the position [h].</param>
/// <param name="Parts">Small parts used.</param>
public sealed record DoDuty(
    Stamp? Entry,
    string? Boat,
    string? Rule,
    [property: OneOf(typeof(Position))] string? Position = null,
    double? Hours = null,
    IReadOnlyList<PartSent>? Parts = null) : ICommand<DoDuty>
{
    /// <inheritdoc/>
    public static string Kind => "duty_done";

    /// <inheritdoc/>
    public static DoDuty Example => new(Examples.At(303, "2026-06-10T09:00:00"), Examples.Boat, "grease-shaft", "single", 296, [new PartSent("grease-400", 1)]);

    /// <inheritdoc/>
    public static string Summary => "Records that a duty of the operator's own was done.";

    /// <inheritdoc/>
    public static Decision Decide(DoDuty command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var rule = check.Id(command.Rule, "/rule");
        var position = check.MaybeOneOf<Position>(command.Position, "/position");
        var hours = check.Hours(command.Hours, "/hours");
        if (command is { Hours: not null, Position: null }) check.Refuse("/position", "missing", "missing: say at which engine the hours were read");
        var parts = PartsUsed.Read(check, command.Parts, "/parts");
        return check.Decide(() => new Decision.Keep(
            [
                new Placed(StreamName.Boat(boat), new DutyDone(entry!, boat, position, rule, hours)),
                .. PartsUsed.Place(entry!, parts, boat, position),
            ],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
