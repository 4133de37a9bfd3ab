using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Figures;

public class What_a_hundred_hours_cost
{
    /// <summary>Three aluminium props of kea (590 h) and one of hers of stainless; each was 300 NZD, and nobody mended any.</summary>
    private static readonly Fleet s_kea = Priced(Worked.Fleet(), "a1", "a2", "a3", "s1");

    [Fact]
    public void It_is_all_costs_over_all_hours()
    {
        var cost = WearCost.Of(s_kea.Record());
        var aluminium = cost.ByMaterial[0];
        Assert.Equal((PropMaterial.Aluminium, 3, 590, 900m, 0m, 0m), (aluminium.Material, aluminium.Props, aluminium.EngineHours, aluminium.Bought, aluminium.ShopWork, aluminium.StrikeDamage));
        Assert.Equal(90000 / 590.0, aluminium.PerHundredHours!.Value, 1e-9);
        Assert.True(aluminium.PerHundredHours.Low < aluminium.PerHundredHours.Value && aluminium.PerHundredHours.High > aluminium.PerHundredHours.Value);
        Assert.Equal("NZD", cost.Currency);
    }

    [Fact]
    public void Too_few_props_say_so_and_what_has_no_price_is_told()
    {
        var cost = WearCost.Of(s_kea.Record());
        Assert.Null(cost.ByMaterial[1].PerHundredHours);
        Assert.Equal("1 priced stainless prop: too few to tell a cost of, 3 are wanted.", cost.ByMaterial[1].Sentence);
        Assert.Equal("Costs of 4 props in NZD: 8 of 12 props have no price.", cost.Sentence);
        Assert.Equal("Prices are not set, so no cost is told: 12 of 12 props have no price.", WearCost.Of(Worked.Fleet().Record()).Sentence);
        Assert.Equal("No prop with known hours is on record, so no cost is told.", WearCost.Of(Dock.OneBoat().Record()).Sentence);
    }

    [Fact]
    public void Two_currencies_are_not_added()
    {
        var cost = WearCost.Of(s_kea.With(Bill("a1", "freight", 20, "AUD")).Record());
        Assert.Equal(("NZD", 1, 2), (cost.Currency, cost.OtherCurrency, cost.ByMaterial[0].Props));
        Assert.Contains("1 has amounts in another currency, which are not added", cost.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_prop_without_a_bill_costs_what_the_list_says_of_its_size_else_of_any()
    {
        var list = Worked.Fleet().With(Price("new_prop", 250, null), Price("new_prop", 280, "13.25x13"));
        Assert.Equal((7 * 280m, 0), (Cost(list).ByMaterial[0].Bought, Cost(list).WithoutPrice));
        Assert.Equal(7 * 250m, Cost(Worked.Fleet().With(Price("new_prop", 250, null))).ByMaterial[0].Bought);
    }

    [Fact]
    public void Of_a_prop_in_use_only_the_share_that_it_used_up_is_charged_once_lives_are_known()
    {
        var list = Worked.Fleet().With(Price("new_prop", 300, null));
        var aluminium = Cost(list).ByMaterial[0];

        // Mean life 293.746 h (R, Reference): a4 ran 330 h in use, so all of it; s5's kind has no mean yet.
        Assert.Equal(293.746, aluminium.MeanLifeHours!.Value, 1e-3);
        Assert.Equal(7 * 300m, aluminium.Bought);
        var young = Cost(list.With(Worked.Prop("young"), Dock.Mounted(Worked.Month(8), "young", boat: "kea", hours: 970), Dock.Hours(Worked.Month(9), 1070, "e-kea"))).ByMaterial[0];
        Assert.Equal(300 * 100 / young.MeanLifeHours!.Value, (double)(young.Bought - (7 * 300)), 0.01);
        Assert.Contains("nobody knows yet how long they last", Cost(list).ByMaterial[1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Shop_jobs_cost_their_bill_else_the_list_and_jobs_with_neither_are_told()
    {
        ICommand[] stay =
        [
            new SendPropToShop(Dock.At("2026-12-01T09:00", "sent"), "a1", "bay-props", "repitch"), new TakePropBackFromShop(Dock.At("2026-12-10T09:00", "back"), "a1"),
            new RepitchProp(Dock.At("2026-12-10T10:00", "repitch"), "a1", 13),
        ];
        Assert.Equal((0m, 1), Shop(s_kea.With(stay)));
        Assert.Equal((80m, 0), Shop(s_kea.With(stay).With(Bill("a1", "shop", 80, "NZD", "2026-12-20T09:00"))));
        Assert.Equal((145m, 0), Shop(s_kea.With(stay).With(Price("shop_repitch", 145, "bay-props"))));
        Assert.Equal((225m, 0), Shop(s_kea.With(stay).With(
            Bill("a1", "shop", 80, "NZD", "2026-12-20T09:00"), new RepairProp(Dock.At("2027-01-20T09:00", "dressed"), "a1", ["edge_dressed"]), Price("shop_repair", 145, null))));
    }

    [Fact]
    public void What_a_strike_did_to_the_lower_unit_is_charged_to_the_prop_that_was_on_less_its_own_bills()
    {
        var strike = Dock.Id("strike kea 3"); // in February, under a1
        var claimed = s_kea.With(
            new OpenClaim(Dock.At("2026-02-14T09:00", "claim"), "kea", "single", "hire-1", strike), new CostClaim(Dock.At("2026-02-20T09:00", "costed"), "kea", Dock.Id("claim"), "invoice", 900, "NZD"));
        Assert.Equal(900m, Cost(claimed).ByMaterial[0].StrikeDamage);
        Assert.Equal(700m, Cost(claimed.With(Bill("a1", "shop", 200, "NZD", "2026-03-10T09:00"))).ByMaterial[0].StrikeDamage);
        var paid = Cost(claimed.With(new CloseClaim(Dock.At("2026-03-01T09:00", "closed"), "kea", Dock.Id("claim"), "recovered", 500, "NZD"))).ByMaterial[0];
        Assert.Equal((900m, 500m), (paid.StrikeDamage, paid.Recovered));
        Assert.Equal(1, Cost(s_kea.With(new OpenClaim(Dock.At("2026-02-14T09:00", "claim"), "kea", "single", "hire-1", strike))).ClaimsWithoutCost);
    }

    [Fact]
    public void A_prop_of_unknown_hours_or_on_loan_is_in_no_figure()
    {
        var fleet = s_kea.With(
            Worked.Prop("f1"), new FindFitted(Dock.At(Worked.Month(8), "find"), "kea", "single", "f1", 980), Dock.Hours(Worked.Month(9), 1000, "e-kea"),
            Worked.Prop("l1"), new TakeLoaner(Dock.At(Worked.Month(8), "loan"), "l1", "bay-props"), Dock.Mounted(Worked.Month(10), "l1", hours: 1001));
        Assert.Equal((4, 1), (Cost(fleet).ByMaterial.Sum(m => m.Props), Cost(fleet).WithoutHours));
    }

    private static WearCost Cost(Fleet fleet) => WearCost.Of(fleet.Record());

    private static (decimal Work, int WithoutPrice) Shop(Fleet fleet) => (Cost(fleet).ByMaterial[0].ShopWork, Cost(fleet).JobsWithoutPrice);

    private static Fleet Priced(Fleet fleet, params string[] props) => fleet.With(props.Select(p => (ICommand)Bill(p, "purchase", 300, "NZD", "2026-01-20T09:00")));

    private static TellPropCost Bill(string prop, string paidFor, decimal amount, string currency, string at = "2026-06-01T09:00") =>
        new(Dock.At(at, $"bill {prop} {paidFor}"), prop, paidFor, amount, currency);

    private static SetPrice Price(string what, decimal amount, string? item) => new(Dock.At("2026-06-01T09:00", $"price {what} {item}"), what, amount, "NZD", item);
}
