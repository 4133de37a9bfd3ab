using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Hire;

/// <summary>Somebody took a boat out of hire. It stays out until somebody returns it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Why">Why.</param>
[StoredAs("out_of_hire", 1)]
public sealed record TakenOutOfHire(Entry Entry, string Boat, OutOfHireReason Why) : IFact;

/// <summary>Why a boat is taken out of hire.</summary>
public enum OutOfHireReason
{
    /// <summary>It hit something.</summary>
    Strike,

    /// <summary>It is damaged.</summary>
    Damage,

    /// <summary>It is being serviced.</summary>
    Service,

    /// <summary>The office keeps it.</summary>
    Office,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Takes a boat out of hire.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Why">Why.</param>
public sealed record TakeOutOfHire(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(OutOfHireReason))] string? Why) : ICommand<TakeOutOfHire>
{
    /// <inheritdoc/>
    public static string Kind => "out_of_hire";

    /// <inheritdoc/>
    public static TakeOutOfHire Example => new(Examples.At(304, "2026-05-20T16:00:00"), Examples.Boat, "strike");

    /// <inheritdoc/>
    public static string Summary => "Takes a boat out of hire until somebody returns it.";

    /// <inheritdoc/>
    public static Decision Decide(TakeOutOfHire command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var why = check.OneOf<OutOfHireReason>(command.Why, "/why");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new TakenOutOfHire(entry!, boat, why))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
