namespace FleetWake.Logbook.Office;

/// <summary>An amount of money. Amounts of two currencies are never added: nobody told the rate.</summary>
/// <param name="Amount">The amount, in <paramref name="Currency"/>.</param>
/// <param name="Currency">Currency by ISO 4217.</param>
public sealed record Money(decimal Amount, string Currency)
{
    /// <summary>An amount that may not have been told.</summary>
    public static Money? Of(decimal? amount, string? currency) => amount is { } a && currency is { } c ? new Money(a, c) : null;

    /// <summary>Sums by currency, in the order of their letters.</summary>
    public static IReadOnlyList<Money> Sums(IEnumerable<Money> amounts) =>
    [
        .. amounts.GroupBy(m => m.Currency, StringComparer.Ordinal)
            .Select(g => new Money(g.Sum(m => m.Amount), g.Key)).OrderBy(m => m.Currency, StringComparer.Ordinal),
    ];

    /// <summary>This less another amount; null when the two are in different currencies.</summary>
    public Money? Less(Money other) => other.Currency == Currency ? this with { Amount = Amount - other.Amount } : null;
}
