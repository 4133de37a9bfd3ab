using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Claims;

/// <summary>A claim came to its end.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Claim">Entry id of the claim.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Amount">What was recovered, in <paramref name="Currency"/>.</param>
/// <param name="Currency">Currency by ISO 4217.</param>
[StoredAs("claim_closed", 1)]
public sealed record ClaimClosed(Entry Entry, string Boat, Guid Claim, ClaimOutcome Outcome, decimal? Amount, string? Currency) : IFact;

/// <summary>How a claim ends.</summary>
public enum ClaimOutcome
{
    /// <summary>Paid, in full or in part.</summary>
    Recovered,

    /// <summary>The operator let it go.</summary>
    Waived,

    /// <summary>Its deadline passed.</summary>
    Lapsed,
}

/// <summary>Closes a claim.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Claim">Entry id of the claim.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Amount">What was recovered, in the currency given; with "recovered", and only with it.</param>
/// <param name="Currency">Currency by ISO 4217, three capital letters.</param>
public sealed record CloseClaim(
    Stamp? Entry,
    string? Boat,
    Guid? Claim,
    [property: OneOf(typeof(ClaimOutcome))] string? Outcome,
    decimal? Amount = null,
    string? Currency = null) : ICommand<CloseClaim>
{
    /// <inheritdoc/>
    public static string Kind => "claim_closed";

    /// <inheritdoc/>
    public static CloseClaim Example => new(Examples.At(232, "2026-06-15T12:00:00"), Examples.Boat, Examples.Id(230), "recovered", 2000, "NOK");

    /// <inheritdoc/>
    public static string Summary => "Records how a claim ended, and what was recovered.";

    /// <inheritdoc/>
    public static Decision Decide(CloseClaim command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var claim = check.EntryId(command.Claim, "/claim", "give the entry id of the claim");
        var outcome = check.OneOf<ClaimOutcome>(command.Outcome, "/outcome");
        decimal? amount = null;
        string? currency = null;
        if (command.Outcome == Words.Of(ClaimOutcome.Recovered))
            (amount, currency) = check.Amount(command.Amount, command.Currency);
        else if (command.Amount is not null || command.Currency is not null)
            check.Refuse("/amount", "nothing_recovered", "an amount stands with \"recovered\" only: leave amount and currency out, or change the outcome");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new ClaimClosed(entry!, boat, claim, outcome, amount, currency))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
