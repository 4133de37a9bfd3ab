using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Props;

public class Records_of_a_props_shop
{
    private const string Time = "2026-03-02T08:00";
    private static readonly SendPropToShop Sent = new(Dock.At(Time, "sent"), "p1", "bay-props", "repitch", 14, "2026-03-20");
    private static readonly TakePropBackFromShop Back = new(Dock.At(Time, "back"), "p1", 13.9, 13.1);
    private static readonly RepairProp Repaired = new(Dock.At(Time, "repaired"), "p1", ["welded", "balanced"], 14.1);
    private static readonly MeasureProp Measured = new(Dock.At(Time, "measured"), "p1", [12.9, 13, 13.1], "shop_machine", 13.2);
    private static readonly RetireProp Retired = new(Dock.At(Time, "retired"), "p1", "corroded");
    private static readonly TakeLoaner Taken = new(Dock.At(Time, "taken"), "p1", "bay-props", "2026-03-02");
    private static readonly TellPropCost Cost = new(Dock.At(Time, "cost"), "p1", "freight", 12.50m, "NZD");
    private static readonly StoreProp Stored = new(Dock.At(Time, "stored"), "p1", "jetty");
    private static readonly StatePropFit Fit = new(Dock.At(Time, "fit"), "p1", "spline-a", 13, "hub-21", "washer-4");

    [Fact]
    public void Each_is_kept_on_the_props_stream()
    {
        Kept(Sent, new PropSentToShop(Dock.Kept(Sent.Entry!), "p1", "bay-props", ShopWish.Repitch, 14, new DateOnly(2026, 3, 20)));
        Kept(Back, new PropBackFromShop(Dock.Kept(Back.Entry!), "p1", 13.9, 13.1));
        Kept(Repaired, new PropRepaired(Dock.Kept(Repaired.Entry!), "p1", [RepairWork.Welded, RepairWork.Balanced], 14.1));
        Kept(Measured, new PropMeasured(Dock.Kept(Measured.Entry!), "p1", 13.2, [12.9, 13, 13.1], PitchTool.ShopMachine));
        Kept(Retired, new PropRetired(Dock.Kept(Retired.Entry!), "p1", PropRetirement.Corroded));
        Kept(Taken, new LoanerTaken(Dock.Kept(Taken.Entry!), "p1", "bay-props", new DateOnly(2026, 3, 2)));
        Kept(new ReturnLoaner(Dock.At(Time, "returned"), "p1"), new LoanerReturned(Dock.Kept(Dock.At(Time, "returned")), "p1"));
        Kept(Cost, new PropCostTold(Dock.Kept(Cost.Entry!), "p1", PropCost.Freight, 12.50m, "NZD"));
        Kept(Stored, new PropStored(Dock.Kept(Stored.Entry!), "p1", "jetty"));
        Kept(Fit, new PropFitStated(Dock.Kept(Fit.Entry!), "p1", "spline-a", 13, "hub-21", "washer-4"));
    }

    [Fact]
    public void What_nobody_said_is_left_open()
    {
        Kept(Sent with { PitchWantedInches = null, DueBackOn = null }, new PropSentToShop(Dock.Kept(Sent.Entry!), "p1", "bay-props", ShopWish.Repitch, null, null));
        Kept(Back with { PitchInches = null, DiameterInches = null }, new PropBackFromShop(Dock.Kept(Back.Entry!), "p1", null, null));
        Kept(Repaired with { PitchAfterInches = null }, new PropRepaired(Dock.Kept(Repaired.Entry!), "p1", [RepairWork.Welded, RepairWork.Balanced], null));
        Kept(Fit with { Spline = null, SplineTeeth = null, ThrustWasher = null }, new PropFitStated(Dock.Kept(Fit.Entry!), "p1", null, null, "hub-21", null));
    }

    [Fact]
    public void A_sending_says_where_to_and_what_for() => Spec.EachIsRefused(
        (Sent with { Prop = null }, "/prop", "missing"),
        (Sent with { Shop = "Bay Props Ltd" }, "/shop", "not_an_id"),
        (Sent with { Wish = "magic" }, "/wish", "unknown_word"),
        (Sent with { PitchWantedInches = 41 }, "/pitchWantedInches", "out_of_range"),
        (Sent with { Wish = "polish" }, "/pitchWantedInches", "not_a_repitch"));

    [Fact]
    public void A_date_to_be_back_by_is_a_date_and_not_before_it_went() => Spec.EachIsRefused(
        (Sent with { DueBackOn = "2026-02-30" }, "/dueBackOn", "not_a_date"),
        (Sent with { DueBackOn = "20.3.2026" }, "/dueBackOn", "not_a_date"),
        (Sent with { DueBackOn = "2026-03-20T08:00" }, "/dueBackOn", "not_a_date"),
        (Sent with { DueBackOn = "0026-03-20" }, "/dueBackOn", "not_a_date"),
        (Sent with { DueBackOn = "2026-03-01" }, "/dueBackOn", "before_the_record"));

    [Fact]
    public void Numbers_that_no_prop_has_are_refused() => Spec.EachIsRefused(
        (Back with { PitchInches = 2.9 }, "/pitchInches", "out_of_range"),
        (Back with { DiameterInches = 337 }, "/diameterInches", "out_of_range"));

    [Fact]
    public void A_repair_says_what_was_done_once_each() => Spec.EachIsRefused(
        (Repaired with { Work = null }, "/work", "too_few"),
        (Repaired with { Work = [] }, "/work", "too_few"),
        (Repaired with { Work = ["welded", "painted"] }, "/work/1", "unknown_word"),
        (Repaired with { Work = ["welded", "welded"] }, "/work", "named_twice"),
        (Repaired with { PitchAfterInches = double.NaN }, "/pitchAfterInches", "out_of_range"));

    [Fact]
    public void A_measuring_has_a_pitch_for_each_blade_and_a_tool() => Spec.EachIsRefused(
        (Measured with { PitchInchesByBlade = [13] }, "/pitchInchesByBlade", "too_few"),
        (Measured with { PitchInchesByBlade = [13, 13, 13, 13, 13, 13, 13, 13] }, "/pitchInchesByBlade", "too_many"),
        (Measured with { PitchInchesByBlade = [13, 130] }, "/pitchInchesByBlade/1", "out_of_range"),
        (Measured with { Tool = "eye" }, "/tool", "unknown_word"),
        (Measured with { DiameterInches = 4 }, "/diameterInches", "out_of_range"));

    [Fact]
    public void The_end_of_a_prop_has_a_reason() => Spec.EachIsRefused((Retired with { Why = null }, "/why", "missing"), (Retired with { Why = "old" }, "/why", "unknown_word"));

    [Fact]
    public void A_loaner_belongs_to_somebody() => Spec.EachIsRefused(
        (Taken with { Lender = null }, "/lender", "missing"),
        (Taken with { DueBackOn = "2026-03-01" }, "/dueBackOn", "before_the_record"));

    [Fact]
    public void A_cost_is_an_amount_with_its_currency() => Spec.EachIsRefused(
        (Cost with { For = "tip" }, "/for", "unknown_word"),
        (Cost with { Amount = null }, "/amount", "missing"),
        (Cost with { Amount = -1 }, "/amount", "out_of_range"),
        (Cost with { Amount = 100_000_000.01m }, "/amount", "out_of_range"),
        (Cost with { Amount = 1.00001m }, "/amount", "too_many_decimals"),
        (Cost with { Currency = null }, "/currency", "missing"),
        (Cost with { Currency = "nzd" }, "/currency", "not_a_currency"),
        (Cost with { Currency = "$" }, "/currency", "not_a_currency"));

    [Fact]
    public void A_place_is_a_dock() => Spec.EachIsRefused((Stored with { Dock = null }, "/dock", "missing"), (Stored with { Prop = null }, "/prop", "missing"));

    [Fact]
    public void A_fit_states_something_that_can_be() => Spec.EachIsRefused(
        (new StatePropFit(Fit.Entry, "p1"), "/splineTeeth", "says_nothing"),
        (Fit with { SplineTeeth = 3 }, "/splineTeeth", "out_of_range"),
        (Fit with { HubKit = "" }, "/hubKit", "missing"));

    private static void Kept<T>(T command, IFact fact)
        where T : ICommand<T> =>
        Spec.Given().When(command).Then(("prop/p1", fact)).Naming(("/prop", "prop/p1"));
}
