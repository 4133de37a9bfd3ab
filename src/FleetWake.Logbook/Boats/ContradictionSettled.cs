using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>A person answered a question that records raised. It is not asked again of these entries, on any boat that asked it; an amendment of one of them is another entry, and may raise it anew.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">A boat that asked.</param>
/// <param name="Contradiction">The kind of question.</param>
/// <param name="Entries">The entries it named.</param>
/// <param name="Answer">The answer.</param>
[StoredAs("contradiction_settled", 1)]
public sealed record ContradictionSettled(
    Entry Entry, string Boat, ContradictionKind Contradiction, IReadOnlyList<Guid> Entries, SettlementAnswer Answer) : IFact;

/// <summary>How a contradiction was settled.</summary>
public enum SettlementAnswer
{
    /// <summary>Both records are as it was: a reading that looked wrong was right, and is believed.</summary>
    BothStand,

    /// <summary>What was wrong is corrected, or is known and left out.</summary>
    Corrected,
}

/// <summary>Answers a question that records raised.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Contradiction">The kind of question.</param>
/// <param name="Entries">The entries it named, 1 to 8.</param>
/// <param name="Answer">The answer.</param>
public sealed record SettleContradiction(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(ContradictionKind))] string? Contradiction,
    IReadOnlyList<Guid>? Entries,
    [property: OneOf(typeof(SettlementAnswer))] string? Answer) : ICommand<SettleContradiction>
{
    /// <inheritdoc/>
    public static string Kind => "contradiction_settled";

    /// <inheritdoc/>
    public static SettleContradiction Example => new(Examples.At(109, "2026-06-15T08:30:00"), Examples.Boat, "rpm_out_of_line", [Examples.Id(12)], "both_stand");

    /// <inheritdoc/>
    public static string Summary => "Answers a question that records raised, so that it is not asked again.";

    /// <inheritdoc/>
    public static Decision Decide(SettleContradiction command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var kind = check.OneOf<ContradictionKind>(command.Contradiction, "/contradiction");
        var entries = check.List(command.Entries, "/entries", 1, 8);
        if (entries.Contains(Guid.Empty)) check.Refuse("/entries", "empty_id", "an all-zero UUID is no entry id");
        check.Once(entries.Select(e => e.ToString()), "/entries", "name each entry once");
        var answer = check.OneOf<SettlementAnswer>(command.Answer, "/answer");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new ContradictionSettled(entry!, boat, kind, entries, answer))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
