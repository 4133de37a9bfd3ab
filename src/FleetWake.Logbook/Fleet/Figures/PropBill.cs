using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>Everything that one prop has cost, each amount as it was told or as the price list has it.</summary>
/// <param name="Price">What it was bought for; null when nobody told it and no list has it.</param>
/// <param name="ShopWork">Shops, freight, and jobs that the price list knows.</param>
/// <param name="JobsWithoutPrice">Jobs that nobody billed and no list prices: they are in no sum.</param>
/// <param name="StrikeDamage">What claims on its strikes cost beyond the prop's own shop bills.</param>
/// <param name="Recovered">What hirers paid of that.</param>
/// <param name="ClaimsWithoutCost">Claims on its strikes that nobody costed.</param>
internal sealed record PropBill(
    Money? Price, IReadOnlyList<Money> ShopWork, int JobsWithoutPrice, IReadOnlyList<Money> StrikeDamage, IReadOnlyList<Money> Recovered, int ClaimsWithoutCost)
{
    /// <summary>Every amount of it.</summary>
    public IEnumerable<Money> Amounts => [.. Price is null ? [] : new[] { Price }, .. ShopWork, .. StrikeDamage, .. Recovered];

    /// <summary>The bill of a prop.</summary>
    public static PropBill Of(PropRecord prop, OfficeRecord office)
    {
        var told = prop.Facts.OfType<PropCostTold>().ToList();
        var bought = Money.Sums(told.Where(c => c.For == PropCost.Purchase).Select(c => new Money(c.Amount, c.Currency)));
        var isNew = prop.Life.Condition is null or PropCondition.New;
        var price = bought.Count > 0 ? bought[0]
            : isNew && prop.Life.Registered is { } registered ? Prices.NewProp(office, registered, (prop.Mountings.FirstOrDefault().Span?.Fitted.Entry ?? registered.Entry).Date())
            : null;
        var open = ShopJob.Of(prop).Where(j => !j.Billed).Select(j => j.ListPrice(office)).ToList();
        var claims = prop.Mountings.SelectMany(m => ClaimOnStrike.Of(m.Boat).Where(c => c.HitMounting?.Original == m.Span.Original)).ToList();
        return new PropBill(
            price,
            [.. told.Where(c => c.For != PropCost.Purchase).Select(c => new Money(c.Amount, c.Currency)), .. open.OfType<Money>(), .. bought.Skip(1)],
            open.Count(p => p is null),
            [.. claims.Select(c => c.BeyondBills(told, prop.Order)).OfType<Money>()],
            [.. claims.Select(c => c.Card.Recovered).OfType<Money>()],
            claims.Count(c => c.Card.Cost is null));
    }
}

/// <summary>A claim with the prop's mounting that was hit.</summary>
/// <param name="Card">The claim.</param>
/// <param name="Hit">The entry of the strike, else of the claim.</param>
/// <param name="HitMounting">The mounting that was hit: the one on at that time, else the last one before; null when none is on record.</param>
internal sealed record ClaimOnStrike(ClaimCard Card, Entry Hit, Mountings.MountingSpan? HitMounting)
{
    /// <summary>Bills later than this after the strike are of another damage [d]; judgement, no source.</summary>
    private const int BillDays = 120;

    public static IEnumerable<ClaimOnStrike> Of(BoatHistory boat)
    {
        var opened = boat.Facts.OfType<ClaimOpened>().ToList();
        if (opened.Count == 0) yield break;
        var cards = Claims.Claims.Of(boat.Facts, boat.Original);
        for (var i = 0; i < opened.Count; i++)
        {
            var strike = opened[i].Strike is { } struck
                ? boat.Facts.OfType<StrikeReported>().FirstOrDefault(s => boat.Original(s.Entry.Id) == boat.Original(struck))
                : null;
            var hit = strike?.Entry ?? opened[i].Entry;
            var here = boat.Mountings.Where(m => m.Fitted.Position == opened[i].Position && boat.Order.Compare(m.Fitted.Entry, hit) <= 0).ToList();
            yield return new ClaimOnStrike(cards[i], hit, here.LastOrDefault(m => m.Holds(hit)) ?? here.LastOrDefault());
        }
    }

    /// <summary>
    /// What the claim cost beyond the struck prop's own shop bills from the strike on, so that work which is both claimed
    /// and told of the prop counts once. Null when it is not costed, or nothing is left.
    /// </summary>
    public Money? BeyondBills(IEnumerable<PropCostTold> told, IComparer<Entry> order)
    {
        if (Card.Cost is not { } cost) return null;
        var until = Hit.Date().AddDays(BillDays);
        var own = told.Where(c => c.For != PropCost.Purchase && c.Currency == cost.Currency && order.Compare(c.Entry, Hit) >= 0 && c.Entry.Date() <= until).Sum(c => c.Amount);
        return cost.Amount > own ? cost with { Amount = cost.Amount - own } : null;
    }
}
