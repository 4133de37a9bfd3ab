using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Claims;

/// <summary>Somebody told what the damage of a claim costs. The last invoice counts, else the last estimate.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Claim">Entry id of the claim.</param>
/// <param name="Stage">Estimate or invoice.</param>
/// <param name="Amount">The amount, in <paramref name="Currency"/>.</param>
/// <param name="Currency">Currency by ISO 4217.</param>
[StoredAs("claim_costed", 1)]
public sealed record ClaimCosted(Entry Entry, string Boat, Guid Claim, CostStage Stage, decimal Amount, string Currency) : IFact;

/// <summary>How firm a cost is.</summary>
public enum CostStage
{
    /// <summary>Somebody's estimate.</summary>
    Estimate,

    /// <summary>The bill.</summary>
    Invoice,
}

/// <summary>Tells what the damage of a claim costs.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Claim">Entry id of the claim.</param>
/// <param name="Stage">Estimate or invoice.</param>
/// <param name="Amount">The amount, in the currency given.</param>
/// <param name="Currency">Currency by ISO 4217, three capital letters.</param>
public sealed record CostClaim(
    Stamp? Entry,
    string? Boat,
    Guid? Claim,
    [property: OneOf(typeof(CostStage))] string? Stage,
    decimal? Amount,
    string? Currency) : ICommand<CostClaim>
{
    /// <inheritdoc/>
    public static string Kind => "claim_costed";

    /// <inheritdoc/>
    public static CostClaim Example => new(Examples.At(231, "2026-05-22T10:00:00"), Examples.Boat, Examples.Id(230), "estimate", 2600, "NOK");

    /// <inheritdoc/>
    public static string Summary => "Records an estimate or an invoice for the damage of a claim.";

    /// <inheritdoc/>
    public static Decision Decide(CostClaim command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var claim = check.EntryId(command.Claim, "/claim", "give the entry id of the claim");
        var stage = check.OneOf<CostStage>(command.Stage, "/stage");
        var (amount, currency) = check.Amount(command.Amount, command.Currency);
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new ClaimCosted(entry!, boat, claim, stage, amount, currency))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
