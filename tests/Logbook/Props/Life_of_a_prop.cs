using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Props;

public class Life_of_a_prop
{
    private static readonly SendPropToShop Sent = new(Dock.At("2026-03-02T08:00", "sent"), "p1", "bay-props", "repitch", 14, "2026-03-20");
    private static readonly StoreProp Stored = new(Dock.At("2026-03-03T08:00", "stored"), "p1", "bay");
    private static readonly RemoveProp Off = Dock.Removed("2026-03-01T09:00") with { Hours = 160 };

    [Fact]
    public void A_prop_that_nobody_mounted_is_a_spare_somewhere()
    {
        var life = new Fleet().With(Dock.Prop()).Life();
        Assert.Equal(new PropPlace(PropStanding.Spare, new DateOnly(2026, 1, 5)), life.Place);
        Assert.Equal((null, 0, null), (life.Hours, life.Mountings.Count, life.CameOff));
        Assert.Equal(PropStanding.NotKnown, new Fleet().Life().Place.Standing);
    }

    [Fact]
    public void It_is_where_it_was_mounted_last() => Assert.Equal(
        new PropPlace(PropStanding.Mounted, new DateOnly(2026, 1, 5), "kea", Position.Single), Dock.OneBoat().Life().Place);

    [Fact]
    public void Taken_off_it_is_a_spare_supposed_at_the_boats_dock_until_somebody_says_where()
    {
        Assert.Equal(new PropPlace(PropStanding.Spare, new DateOnly(2026, 3, 1), Dock: "jetty", DockAssumed: true), Dock.OneBoat().With(Off).Life().Place);
        Assert.Equal(new PropPlace(PropStanding.Spare, new DateOnly(2026, 3, 3), Dock: "bay"), Dock.OneBoat().With(Off, Stored).Life().Place);
    }

    /// <summary>One entry then ends a mounting and begins the next.</summary>
    [Fact]
    public void Fitted_twice_without_coming_off_it_is_still_on_its_boat() =>
        Assert.Equal(PropStanding.Mounted, Dock.OneBoat().With(Dock.Mounted("2026-02-01T09:00")).Life().Place.Standing);

    [Fact]
    public void A_mounting_that_is_closed_late_does_not_take_it_off_where_it_is_now()
    {
        var found = Dock.OneBoat().With(
            Dock.Boat(boat: "tui"), new FindFitted(Dock.At("2026-03-01T09:00", "found"), "tui", "single", "p1"), Dock.Prop(prop: "p2"), Dock.Mounted("2026-03-05T09:00", "p2"));
        Assert.Equal(new PropPlace(PropStanding.Mounted, new DateOnly(2026, 3, 1), "tui", Position.Single), found.Life().Place);
        Assert.Equal(PropStanding.AtShop, Dock.OneBoat().With(Sent, Dock.Removed("2026-03-02T10:00")).Life().Place.Standing);
    }

    [Fact]
    public void The_dock_supposed_is_the_boats_home_on_that_day()
    {
        var moved = new RehomeBoat(Dock.At("2026-02-01T08:00", "moved"), "kea", "bay", Dock.Zone);
        Assert.Equal("bay", Dock.OneBoat().With(moved, Off).Life().Place.Dock);
        Assert.Equal("jetty", Dock.OneBoat().With(moved with { Entry = Dock.At("2026-04-01T08:00", "moved") }, Off).Life().Place.Dock);
    }

    [Fact]
    public void It_is_at_the_shop_until_it_is_back_or_runs_again()
    {
        var sent = Dock.OneBoat().With(Off, Sent);
        Assert.Equal(
            new PropPlace(PropStanding.AtShop, new DateOnly(2026, 3, 2), Shop: "bay-props", Wish: ShopWish.Repitch, DueBackOn: new DateOnly(2026, 3, 20)), sent.Life().Place);
        Assert.Equal(PropStanding.Spare, sent.With(new TakePropBackFromShop(Dock.At("2026-03-18T08:00", "back"), "p1")).Life().Place.Standing);
        Assert.Equal(PropStanding.Mounted, sent.With(Dock.Mounted("2026-03-19T08:00")).Life().Place.Standing);
    }

    [Fact]
    public void Papers_written_late_do_not_take_it_off_its_boat() => Assert.Equal(
        PropStanding.Mounted,
        Dock.OneBoat().With(
            new AcquireProp(Dock.At("2026-01-07T08:00", "buy"), "p1", "new"),
            new TakeLoaner(Dock.At("2026-01-08T08:00", "loan"), "p1", "bay-props"),
            new TakePropBackFromShop(Dock.At("2026-01-09T08:00", "back"), "p1")).Life().Place.Standing);

    [Fact]
    public void A_retired_prop_says_why() => Assert.Equal(
        new PropPlace(PropStanding.Retired, new DateOnly(2026, 3, 5), Retired: PropRetirement.Struck),
        Dock.OneBoat().With(Off, new RetireProp(Dock.At("2026-03-05T08:00", "end"), "p1", "struck")).Life().Place);

    [Fact]
    public void A_loaner_is_somebody_elses_until_it_goes_back()
    {
        var taken = new Fleet().With(Dock.Prop(), new TakeLoaner(Dock.At("2026-02-01T08:00", "loan"), "p1", "bay-props", "2026-02-15"));
        Assert.Equal(new PropLoan("bay-props", new DateOnly(2026, 2, 1), new DateOnly(2026, 2, 15)), taken.Life().Loan);
        var back = taken.With(new ReturnLoaner(Dock.At("2026-02-14T08:00", "returned"), "p1")).Life();
        Assert.Null(back.Loan);
        Assert.Equal(new PropPlace(PropStanding.GivenBack, new DateOnly(2026, 2, 14), Shop: "bay-props"), back.Place);
    }

    [Fact]
    public void Its_hours_are_the_engines_while_it_was_mounted()
    {
        var life = Dock.OneBoat().With(
            Dock.Mounted("2026-01-05T09:00", "p1", hours: 100) with { Entry = Dock.At("2026-01-05T09:00", "sheet", amends: "mount p1 kea 2026-01-05T09:00") },
            Off,
            Dock.Mounted("2026-03-10T09:00", hours: 170),
            Dock.Hours("2026-04-01T09:00", 195)).Life();
        Assert.Equal([60, 25], life.Mountings.Select(m => m.Hours));
        Assert.Equal([("kea", "e1", false), ("kea", "e1", false)], life.Mountings.Select(m => (m.Boat, m.Engine!, m.Bridged)));
        Assert.Equal((85, false), (life.Hours, life.HoursBridged));
    }

    [Fact]
    public void Hours_reckoned_between_two_readings_are_marked()
    {
        var life = Dock.OneBoat().With(Off with { Hours = null }, Dock.Hours("2026-04-01T09:00", 195)).Life();
        Assert.True(life.HoursBridged);
        Assert.InRange(life.Hours!.Value, 60, 64); // 95 h over 86 days, off after 55 of them
    }

    [Fact]
    public void Hours_before_the_first_reading_of_the_meter_are_left_out()
    {
        var fleet = new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(hours: null), Dock.Prop(), Dock.Mounted());
        Assert.Null(fleet.Life().Hours);
        var read = fleet.With(Dock.Hours("2026-02-01T09:00", 120), Dock.Hours("2026-03-01T09:00", 150)).Life();
        Assert.Equal((30, true), (read.Hours, read.HoursBridged));
    }

    [Fact]
    public void A_sum_that_leaves_out_a_mounting_is_marked()
    {
        var life = Dock.OneBoat().With(
            Dock.Mounted("2026-01-05T09:00", "p1", hours: 100) with { Entry = Dock.At("2026-01-05T09:00", "sheet", amends: "mount p1 kea 2026-01-05T09:00") },
            Off, Dock.Boat(boat: "tui"), Dock.Mounted("2026-03-10T09:00", boat: "tui")).Life();
        Assert.Equal([60, null], life.Mountings.Select(m => m.Hours));
        Assert.Equal((60, true), (life.Hours, life.HoursBridged));
    }

    [Fact]
    public void Its_hours_on_two_boats_are_added()
    {
        var life = Dock.OneBoat().With(
            Off,
            Dock.Boat(boat: "tui"),
            Dock.Engine(engine: "e2"),
            Dock.Fitted("2026-01-05T08:02", "e2", boat: "tui", hours: 500),
            Dock.Mounted("2026-03-10T09:00", boat: "tui", hours: 520),
            Dock.Hours("2026-04-01T09:00", 540, "e2")).Life();
        Assert.Equal(["kea", "tui"], life.Mountings.Select(m => m.Boat));
        Assert.InRange(life.Hours!.Value, 79.9, 80); // the meter ran some minutes between the hanging of the engine and the fitting of the prop
    }

    [Fact]
    public void It_goes_by_the_numbers_that_were_told_last()
    {
        var fleet = new Fleet().With(Dock.Prop());
        Assert.Equal(new PropNumbers(13, 13.25), fleet.Life().Numbers);
        var repitched = fleet.With(new RepitchProp(Dock.At("2026-02-01T08:00", "repitch"), "p1", 14.2, 13, 13.1));
        Assert.Equal(new PropNumbers(14.2, 13.1), repitched.Life().Numbers);
        Assert.Equal(new PropNumbers(14.1, 13.1), repitched.With(new TakePropBackFromShop(Dock.At("2026-02-03T08:00", "back"), "p1", 14.1)).Life().Numbers);
        Assert.Equal(new PropNumbers(14, 13.1), repitched.With(new RepairProp(Dock.At("2026-02-04T08:00", "repair"), "p1", ["welded"], 14)).Life().Numbers);
    }

    [Fact]
    public void A_gauge_does_not_change_the_numbers_it_goes_by()
    {
        var life = Dock.OneBoat().With(
            new MeasureProp(Dock.At("2026-02-01T08:00", "gauge"), "p1", [12.8, 12.9, 13.1], "pitch_blocks", 13.2),
            Dock.Look("2026-02-05T08:00") with { MeasuredPitchInches = [12.7, 12.8, 13] }).Life();
        Assert.Equal(new PropNumbers(13, 13.25), life.Numbers);
        Assert.Equal([PropReadingSource.Stamped, PropReadingSource.Measured, PropReadingSource.Inspected], life.Readings.Select(r => r.Source));
        Assert.Equal([12.7, 12.8, 13], life.LastMeasured!.PitchInchesByBlade);
        Assert.Equal(PitchTool.PitchBlocks, life.Readings[1].Tool);
    }

    [Fact]
    public void An_inspection_after_it_came_off_is_not_of_it() =>
        Assert.Null(Dock.OneBoat().With(Off, Dock.Look("2026-03-05T08:00") with { MeasuredPitchInches = [12.7, 12.8, 13] }).Life().LastMeasured);

    [Fact]
    public void What_it_cost_is_added_by_currency()
    {
        TellPropCost Cost(string label, decimal amount, string currency) => new(Dock.At("2026-02-01T08:00", label), "p1", "shop", amount, currency);
        Assert.Equal([new Money(20, "AUD"), new Money(110.55m, "NZD")], new Fleet().With(Cost("a", 100.50m, "NZD"), Cost("b", 20, "AUD"), Cost("c", 10.05m, "NZD")).Life().Costs);
    }

    [Fact]
    public void A_prop_that_came_off_struck_stays_so_until_it_is_mended()
    {
        var struck = Dock.OneBoat().With(Off with { Why = "struck" });
        Assert.Equal(new PropCameOff(new DateOnly(2026, 3, 1), RemovalReason.Struck), struck.Life().CameOff);
        Assert.Null(struck.With(new RepairProp(Dock.At("2026-03-04T08:00", "repair"), "p1", ["straightened"])).Life().CameOff);
        Assert.NotNull(struck.With(new RepairProp(Dock.At("2026-02-04T08:00", "repair"), "p1", ["straightened"])).Life().CameOff);
        Assert.Null(Dock.OneBoat().With(Off with { Why = "other_size" }).Life().CameOff);
    }

    [Fact]
    public void A_slipping_hub_is_mended_by_a_hub()
    {
        var slipped = Dock.OneBoat().With(Off with { Why = "hub_slip" });
        Assert.NotNull(slipped.With(new RepairProp(Dock.At("2026-03-04T08:00", "repair"), "p1", ["polished"])).Life().CameOff);
        Assert.Null(slipped.With(new ReplaceHub(Dock.At("2026-03-04T08:00", "hub"), "p1")).Life().CameOff);
        Assert.NotNull(Dock.OneBoat().With(Off with { Why = "struck" }, new ReplaceHub(Dock.At("2026-03-04T08:00", "hub"), "p1")).Life().CameOff);
        Assert.Null(slipped.With(Sent, new TakePropBackFromShop(Dock.At("2026-03-14T08:00", "back"), "p1")).Life().CameOff);
    }

    [Fact]
    public void A_new_hub_kit_is_the_one_it_fits_by()
    {
        var stated = new Fleet().With(new StatePropFit(Dock.At("2026-01-06T08:00", "fit"), "p1", "spline-a", 13, "hub-9", "washer-4"));
        ReplaceHub Hub(string? kit) => new(Dock.At("2026-03-04T08:00", "hub"), "p1", kit);
        Assert.Equal(new PropFit("spline-a", 13, "hub-9", "washer-4"), stated.Life().Fit);
        Assert.Equal(new PropFit("spline-a", 13, "hub-9", "washer-4"), stated.With(Hub("hub-9")).Life().Fit);
        Assert.Equal(new PropFit(null, null, "hub-21", "washer-4"), stated.With(Hub("hub-21")).Life().Fit);
        Assert.Equal(new PropFit(null, null, null, "washer-4"), stated.With(Hub(null)).Life().Fit);
        Assert.Equal(new PropFit(null, null, "hub-21", null), new Fleet().With(Hub("hub-21")).Life().Fit);
        Assert.Null(new Fleet().With(Hub(null)).Life().Fit);
    }

    [Fact]
    public void A_mounting_that_is_taken_back_was_never_there()
    {
        var back = new Retract(Dock.At("2026-01-06T08:00", "never"), Dock.Id("mount p1 kea 2026-01-05T09:00"), "wrong_subject", Boat: "kea");
        var life = Dock.OneBoat().With(back).Life();
        Assert.Empty(life.Mountings);
        Assert.Equal(PropStanding.Spare, life.Place.Standing);
    }
}
