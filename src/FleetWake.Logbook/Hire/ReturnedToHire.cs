using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Hire;

/// <summary>Somebody put a boat back in hire. It lifts what kept the boat until then, a verdict of "take off" excepted; it clears no strike.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Why">On what grounds.</param>
[StoredAs("back_in_hire", 1)]
public sealed record ReturnedToHire(Entry Entry, string Boat, BackInHireReason Why) : IFact;

/// <summary>On what grounds a boat is put back in hire.</summary>
public enum BackInHireReason
{
    /// <summary>A mechanic looked at it at the dock.</summary>
    LookedAtDock,

    /// <summary>It was repaired.</summary>
    Repaired,

    /// <summary>The office decided.</summary>
    Office,
}

/// <summary>Puts a boat back in hire.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Why">On what grounds.</param>
public sealed record ReturnToHire(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(BackInHireReason))] string? Why) : ICommand<ReturnToHire>
{
    /// <inheritdoc/>
    public static string Kind => "back_in_hire";

    /// <inheritdoc/>
    public static ReturnToHire Example => new(Examples.At(305, "2026-05-20T17:30:00"), Examples.Boat, "looked_at_dock");

    /// <inheritdoc/>
    public static string Summary => "Puts a boat back in hire; a verdict of \"take off\" still keeps it.";

    /// <inheritdoc/>
    public static Decision Decide(ReturnToHire command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var why = check.OneOf<BackInHireReason>(command.Why, "/why");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new ReturnedToHire(entry!, boat, why))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
