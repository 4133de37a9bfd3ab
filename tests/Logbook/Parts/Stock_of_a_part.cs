using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Parts;

namespace FleetWake.Logbook.Tests.Parts;

public class Stock_of_a_part
{
    private static readonly StockPart Bag = new(Dock.At("2026-01-02T08:00", "bag"), "pin", "cotter_pin", "jetty", 50, "Cotter pin");
    private static readonly MountProp Mounted = Dock.Mounted() with { Entry = Dock.At("2026-01-05T09:00", "mount"), Parts = [new("pin", 2, "jetty")] };

    [Fact]
    public void It_is_what_came_less_what_was_used_at_each_dock()
    {
        var stock = Of(Bag, Bag with { Entry = Dock.At("2026-01-03T08:00", "bag 2"), Dock = "bay", Quantity = 5, Name = null }, Used("use", 3), Mounted);
        Assert.Equal(("pin", "Cotter pin", PartKind.CotterPin), (stock.Part, stock.Name, stock.Kind));
        Assert.Equal([new("bay", 5, null), new("jetty", 45, null)], stock.Docks);
        Assert.Equal((50, 45, (int?)null), (stock.Total(), stock.At("jetty"), stock.At("elsewhere")));
    }

    [Fact]
    public void A_stock_take_counts_anew_for_its_dock() => Assert.Equal(
        [new("bay", 5, null), new("jetty", 38, new DateOnly(2026, 2, 1))],
        Of(Bag, Bag with { Entry = Dock.At("2026-01-03T08:00", "bag 2"), Dock = "bay", Quantity = 5 }, Used("use", 3), Counted(40), Used("late", 2, time: "2026-02-02T08:00")).Docks);

    [Fact]
    public void A_use_told_late_but_older_than_the_stock_take_changes_nothing() =>
        Assert.Equal(40, Of(Bag, Counted(40), Used("late", 2, time: "2026-01-20T08:00")).At("jetty"));

    [Fact]
    public void What_was_used_from_no_dock_is_missing_from_all_together_until_somebody_counts()
    {
        var stock = Of(Bag, Used("use", 3, dock: null));
        Assert.Equal((50, 3, 47), (stock.At("jetty"), stock.UsedFromNowhere, stock.Total()));
        Assert.Equal(0, Of(Bag, Used("use", 3, dock: null), Counted(47)).UsedFromNowhere);
    }

    [Fact]
    public void A_count_at_one_dock_does_not_settle_what_may_have_been_used_from_another()
    {
        var bay = Bag with { Entry = Dock.At("2026-01-03T08:00", "bag 2"), Dock = "bay", Quantity = 5 };
        Assert.Equal(3, Of(Bag, bay, Used("use", 3, dock: null), Counted(47)).UsedFromNowhere);
        var both = Of(Bag, bay, Used("use", 3, dock: null), Counted(47), Counted(5) with { Entry = Dock.At("2026-02-03T08:00", "count 2"), Dock = "bay" });
        Assert.Equal((0, 52), (both.UsedFromNowhere, both.Total()));
        Assert.Equal(0, Of(Bag, Used("use", 3, dock: null), bay with { Entry = Dock.At("2026-01-20T08:00", "bag 2") }, Counted(47)).UsedFromNowhere);
        Assert.Equal(0, Of(Used("use", 3, dock: null), Counted(47)).UsedFromNowhere);
    }

    [Fact]
    public void More_used_than_came_is_told_as_it_is() => Assert.Equal(-1, Of(Used("use", 1)).At("jetty"));

    [Fact]
    public void A_mounting_that_is_taken_back_gives_its_pins_back() =>
        Assert.Equal(50, Of(Bag, Mounted, new Retract(Dock.At("2026-01-06T08:00", "back"), Dock.Id("mount"), "did_not_happen", Boat: "kea")).At("jetty"));

    [Fact]
    public void A_mounting_that_is_amended_uses_what_it_says_last()
    {
        var again = Mounted with { Entry = Dock.At("2026-01-05T09:05", "again", amends: "mount") };
        Assert.Equal(49, Of(Bag, Mounted, again with { Parts = [new("pin", 1, "jetty")] }).At("jetty"));
        Assert.Equal(50, Of(Bag, Mounted, again with { Parts = null }).At("jetty"));
    }

    [Fact]
    public void A_use_that_is_taken_back_on_its_own_log_is_given_back() =>
        Assert.Equal(50, Of(Bag, Used("use", 3), new Retract(Dock.At("2026-01-20T08:00", "back"), Dock.Id("use"), "typed_wrong", Part: "pin")).At("jetty"));

    [Fact]
    public void A_strike_does_not_amend_a_use()
    {
        var strike = Dock.Strike("2026-01-20T08:00") with { Entry = Dock.At("2026-01-20T08:00", "strike", amends: "use") };
        Assert.Equal(47, Of(Bag, Used("use", 3), strike).At("jetty"));
    }

    private static PartStock Of(params ICommand[] records)
    {
        var fleet = new Fleet().With(records);
        var log = fleet.Log("part/pin");
        return PartStock.Of(log, PartStock.BoatsNamed(log).Select(b => fleet.Log("boat/" + b)));
    }

    private static UsePart Used(string label, int quantity, string? dock = "jetty", string time = "2026-01-10T08:00") =>
        new(Dock.At(time, label), "pin", quantity, dock, "kea", "single");

    private static CountPart Counted(int quantity) => new(Dock.At("2026-02-01T08:00", "count"), "pin", "jetty", quantity);
}
