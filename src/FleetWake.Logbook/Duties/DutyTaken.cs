using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Duties;

/// <summary>Somebody, the one whom the stamp names, will see to a duty. Taking it again gives it to whoever took it last.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position; null for every position that the rule is due at.</param>
/// <param name="Rule">Id of the rule by which it is due.</param>
[StoredAs("duty_taken", 1)]
public sealed record DutyTaken(Entry Entry, string Boat, Position? Position, string Rule) : IFact;

/// <summary>Takes a duty.</summary>
/// <param name="Entry">The stamp; whoever it names takes the duty.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Rule">Id of the rule by which it is due.</param>
/// <param name="Position">The position; left out for every position that the rule is due at.</param>
public sealed record TakeDuty(
    Stamp? Entry,
    string? Boat,
    string? Rule,
    [property: OneOf(typeof(Position))] string? Position = null) : ICommand<TakeDuty>
{
    /// <inheritdoc/>
    public static string Kind => "duty_taken";

    /// <inheritdoc/>
    public static TakeDuty Example => new(Examples.At(302, "2026-05-20T16:10:00"), Examples.Boat, "after-strike", "single");

    /// <inheritdoc/>
    public static string Summary => "Records who will see to a duty.";

    /// <inheritdoc/>
    public static Decision Decide(TakeDuty command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var rule = check.Id(command.Rule, "/rule");
        var position = check.MaybeOneOf<Position>(command.Position, "/position");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new DutyTaken(entry!, boat, position, rule))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
