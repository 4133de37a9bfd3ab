using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;

namespace FleetWake.Web.Office.Shop;

/// <summary>What is away at shops, what is here on loan, and what shops cost.</summary>
/// <param name="Away">Props at a shop: overdue first, then by the day they are due, those without one last.</param>
/// <param name="Loaners">Props on loan that did not go back, likewise.</param>
/// <param name="Costs">Bills of shops and freight by year, the newest first.</param>
public sealed record ShopView(IReadOnlyList<PropLife> Away, IReadOnlyList<PropLife> Loaners, IReadOnlyList<YearOfBills> Costs)
{
    internal static async Task<ShopView> OfAsync(FleetReading reading, string tenant, CancellationToken ct)
    {
        // Few props were ever away: only their lives are told.
        var billed = (await reading.StreamsWithAsync<PropCostTold>(tenant, ct)).Where(s => StreamName.PropOf(s) is not null);
        var bills = (await reading.LogsAsync(tenant, billed, ct)).Values.SelectMany(l => Effective.Of(l.Facts).Facts).OfType<PropCostTold>();
        return new ShopView(
            [.. (await reading.PropsAtShopAsync(tenant, ct)).OrderBy(l => l.Place.DueBackOn ?? DateOnly.MaxValue).ThenBy(l => l.Place.Since).ThenBy(l => l.Prop, StringComparer.Ordinal)],
            await reading.LoanersAsync(tenant, ct),
            YearOfBills.Of(bills));
    }

    /// <summary>How many days a prop is overdue on a day; null when it is not.</summary>
    public static int? Overdue(DateOnly? due, DateOnly today) => due is { } on && on < today ? today.DayNumber - on.DayNumber : null;
}

/// <summary>What shops and freight cost in a year, by currency: amounts of two are never added.</summary>
/// <param name="Year">The year.</param>
/// <param name="Bills">How many bills.</param>
/// <param name="Work">Shops' work.</param>
/// <param name="Freight">Freight.</param>
public sealed record YearOfBills(int Year, int Bills, IReadOnlyList<Money> Work, IReadOnlyList<Money> Freight)
{
    internal static IReadOnlyList<YearOfBills> Of(IEnumerable<PropCostTold> bills) =>
    [
        .. bills.Where(b => b.For is PropCost.Shop or PropCost.Freight).GroupBy(b => b.Entry.Date().Year).OrderByDescending(g => g.Key)
            .Select(g => new YearOfBills(g.Key, g.Count(), Sums(g, PropCost.Shop), Sums(g, PropCost.Freight))),
    ];

    private static IReadOnlyList<Money> Sums(IEnumerable<PropCostTold> bills, PropCost what) => Money.Sums(bills.Where(b => b.For == what).Select(b => new Money(b.Amount, b.Currency)));
}
