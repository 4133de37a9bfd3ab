using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Claims;

/// <summary>Claims of one boat.</summary>
public static class Claims
{
    /// <summary>Reads the claims out of a boat's facts.</summary>
    /// <param name="facts">The facts that count, in order.</param>
    /// <param name="original">The entry that a record began with, for records that were amended since they were named.</param>
    public static IReadOnlyList<ClaimCard> Of(IReadOnlyList<IFact> facts, Func<Guid, Guid>? original = null)
    {
        var first = original ?? (id => id);
        return [.. facts.OfType<ClaimOpened>().Select(c => Card(c, facts, first))];
    }

    private static ClaimCard Card(ClaimOpened opened, IReadOnlyList<IFact> facts, Func<Guid, Guid> first)
    {
        var id = first(opened.Entry.Id);
        var costs = facts.OfType<ClaimCosted>().Where(c => first(c.Claim) == id).ToList();
        var cost = costs.LastOrDefault(c => c.Stage == CostStage.Invoice) ?? costs.LastOrDefault();
        var closed = facts.OfType<ClaimClosed>().LastOrDefault(c => first(c.Claim) == id);
        var damage = cost is null ? null : new Money(cost.Amount, cost.Currency);
        var recovered = Money.Of(closed?.Amount, closed?.Currency);
        var strike = opened.Strike is { } struck ? facts.OfType<StrikeReported>().FirstOrDefault(s => first(s.Entry.Id) == first(struck)) : null;
        return new ClaimCard(
            id,
            opened.Boat,
            opened.Position,
            opened.Hire,
            opened.Entry.Date(),
            State(closed?.Outcome),
            opened.Deadline,
            Money.Of(opened.Deposit, opened.DepositCurrency),
            damage,
            cost?.Stage,
            recovered,
            recovered is null ? damage : damage?.Less(recovered),
            Statements.Of(opened, strike, facts));
    }

    private static ClaimState State(ClaimOutcome? outcome) => outcome switch
    {
        null => ClaimState.Open,
        ClaimOutcome.Recovered => ClaimState.Recovered,
        ClaimOutcome.Waived => ClaimState.Waived,
        _ => ClaimState.Lapsed,
    };
}
