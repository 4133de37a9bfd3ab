using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>Something about hull or transom was changed that trials feel. What they showed before no longer stands for it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position it concerns; null when it concerns the whole boat.</param>
/// <param name="Change">What was changed.</param>
[StoredAs("rig_changed", 1)]
public sealed record RigChanged(Entry Entry, string Boat, Position? Position, RigChange Change) : IFact;

/// <summary>What is changed about hull or transom.</summary>
public enum RigChange
{
    /// <summary>A hydrofoil on a lower unit, fitted or taken off.</summary>
    Hydrofoil,

    /// <summary>Trim tabs.</summary>
    TrimTabs,

    /// <summary>Height of an engine on the transom.</summary>
    EngineHeight,

    /// <summary>Paint of the bottom.</summary>
    BottomPaint,

    /// <summary>Something else.</summary>
    Other,
}

/// <summary>Records a change of the rig.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Change">What was changed.</param>
/// <param name="Position">The position it concerns; left out when it concerns the whole boat.</param>
public sealed record ChangeRig(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(RigChange))] string? Change,
    [property: OneOf(typeof(Position))] string? Position = null) : ICommand<ChangeRig>
{
    /// <inheritdoc/>
    public static string Kind => "rig_changed";

    /// <inheritdoc/>
    public static ChangeRig Example => new(Examples.At(104, "2026-07-20T11:00:00"), Examples.Boat, "engine_height", "single");

    /// <inheritdoc/>
    public static string Summary => "Records a change of hydrofoil, trim tabs, engine height or bottom paint; trials get a new baseline.";

    /// <inheritdoc/>
    public static Decision Decide(ChangeRig command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var change = check.OneOf<RigChange>(command.Change, "/change");
        var position = check.MaybeOneOf<Position>(command.Position, "/position");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new RigChanged(entry!, boat, position, change))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
