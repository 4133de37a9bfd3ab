using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>
/// One stay of a prop at a shop with what was done to it there, or work that was told of one day without a stay. Bills are
/// told without saying of which job, so each takes the last job before it that has none yet, else the first after it.
/// </summary>
/// <param name="At">The entry that began it.</param>
/// <param name="Repitch">It was repitched, or sent for that; else repaired.</param>
/// <param name="Shop">The shop; null when nobody named it.</param>
/// <param name="Billed">A bill was told.</param>
internal sealed record ShopJob(Entry At, bool Repitch, string? Shop, bool Billed)
{
    /// <summary>The paper that says what was done is often written when the prop is back, by this many days [d]; judgement, no source.</summary>
    private const int PaperDays = 14;

    /// <summary>The jobs of a prop, in order.</summary>
    public static IReadOnlyList<ShopJob> Of(PropRecord prop)
    {
        var jobs = new List<ShopJob>();
        var (atShop, back) = (false, (DateOnly?)null);
        foreach (var fact in prop.Facts)
        {
            switch (fact)
            {
                case PropSentToShop sent:
                    jobs.Add(new ShopJob(sent.Entry, sent.Wish == ShopWish.Repitch, sent.Shop, false));
                    (atShop, back) = (true, null);
                    break;
                case PropBackFromShop:
                    (atShop, back) = (false, atShop ? fact.Entry.Date() : null);
                    break;
                case Repitched or PropRepaired:
                    var same = jobs.Count > 0 && (atShop || fact.Entry.Date() <= back?.AddDays(PaperDays) || jobs[^1].At.Date() == fact.Entry.Date());
                    if (!same) jobs.Add(new ShopJob(fact.Entry, fact is Repitched, null, false));
                    else if (fact is Repitched) jobs[^1] = jobs[^1] with { Repitch = true };
                    break;
            }
        }

        foreach (var bill in prop.Facts.OfType<PropCostTold>().Where(c => c.For == PropCost.Shop))
        {
            var job = jobs.FindLastIndex(j => !j.Billed && prop.Order.Compare(j.At, bill.Entry) <= 0);
            if (job < 0) job = jobs.FindIndex(j => !j.Billed);
            if (job >= 0) jobs[job] = jobs[job] with { Billed = true };
        }

        return jobs;
    }

    /// <summary>What the price list says it costs; null when it says nothing.</summary>
    public Money? ListPrice(OfficeRecord office) =>
        Prices.Near(office, At.Date(), Repitch ? PricedThing.ShopRepitch : PricedThing.ShopRepair, Shop);
}

/// <summary>The operator's price list, as a cost of the past is read from it.</summary>
internal static class Prices
{
    /// <summary>
    /// The price on a day; before the first one that was set, that first one: a list is often written long after the fleet began.
    /// </summary>
    public static Money? Near(OfficeRecord office, DateOnly day, PricedThing what, string? item) =>
        (office.PriceOn(day, what, item)
            ?? office.Prices.FirstOrDefault(p => p.What == what && p.Item == item)
            ?? office.Prices.FirstOrDefault(p => p.What == what && p.Item is null))?.Money;

    /// <summary>The price of a new prop: of its very size, written <c>13.25x13</c>, else of any.</summary>
    public static Money? NewProp(OfficeRecord office, PropRegistered prop, DateOnly day) =>
        Near(office, day, PricedThing.NewProp, $"{prop.DiameterInches:0.##}x{prop.PitchInches:0.##}");
}
