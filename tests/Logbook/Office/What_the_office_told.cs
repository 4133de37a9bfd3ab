using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;

namespace FleetWake.Logbook.Tests.Office;

public class What_the_office_told
{
    [Fact]
    public void A_dock_is_as_it_was_told_last()
    {
        var office = Of(
            new OpenDock(Dock.At("2026-01-02T08:00", "jetty"), "jetty", "Jetty", Dock.Zone, "salt", "sand"),
            new OpenDock(Dock.At("2026-01-02T08:01", "bay"), "bay", "The Bay", "Pacific/Chatham"),
            new OpenDock(Dock.At("2026-02-02T08:00", "jetty 2"), "jetty", "North Jetty", Dock.Zone, "brackish"));
        Assert.Equal([new("bay", "The Bay", "Pacific/Chatham", null, null), new("jetty", "North Jetty", Dock.Zone, WaterType.Brackish, null)], office.Docks);
    }

    [Fact]
    public void A_person_does_what_was_given_last() => Assert.Equal(
        [new("mech-2", Role.Manager, new DateOnly(2026, 3, 1)), new("mech-3", Role.Analyst, new DateOnly(2026, 1, 3))],
        Of(
            new GiveRole(Dock.At("2026-03-01T08:00", "role"), "mech-2", "manager"),
            new InvitePerson(Dock.At("2026-01-03T08:00", "invite 3"), "mech-3", "analyst"),
            new InvitePerson(Dock.At("2026-01-02T08:00", "invite"), "mech-2", "mechanic")).People);

    [Fact]
    public void A_device_is_revoked_until_it_is_enrolled_again()
    {
        ICommand[] told =
        [
            new EnrolDevice(Dock.At("2026-01-02T08:00", "enrol"), "phone-4", "jetty"),
            new RevokeDevice(Dock.At("2026-02-02T08:00", "revoke"), "phone-4"),
        ];
        Assert.Equal([new("phone-4", "jetty", new DateOnly(2026, 2, 2), true)], Of(told).Devices);
        Assert.Equal(
            [new("phone-4", "bay", new DateOnly(2026, 3, 2), false)],
            Of([.. told, new EnrolDevice(Dock.At("2026-03-02T08:00", "enrol 2"), "phone-4", "bay")]).Devices);
    }

    [Fact]
    public void A_digest_goes_out_as_was_set_last() => Assert.Equal(
        [new(ScheduledDigest.WeeklyWear, DayOfWeek.Friday, new TimeOnly(17, 0))],
        Of(
            new SetSchedule(Dock.At("2026-01-02T08:00", "set"), "weekly_wear", "monday", "06:30"),
            new SetSchedule(Dock.At("2026-02-02T08:00", "set 2"), "weekly_wear", "friday", "17:00")).Schedules);

    [Fact]
    public void A_price_counts_from_its_day_until_the_next()
    {
        var office = Of(Price("a", "2026-01-02T08:00", 90), Price("b", "2026-03-01T08:00", 95));
        Assert.Null(office.PriceOn(new DateOnly(2026, 1, 1), PricedThing.LabourHour));
        Assert.Equal(90, office.PriceOn(new DateOnly(2026, 2, 28), PricedThing.LabourHour)!.Money.Amount);
        Assert.Equal(95, office.PriceOn(new DateOnly(2026, 3, 1), PricedThing.LabourHour)!.Money.Amount);
        Assert.Null(office.PriceOn(new DateOnly(2026, 3, 1), PricedThing.HireDay));
    }

    [Fact]
    public void A_price_of_one_shop_goes_before_that_of_any()
    {
        var office = Of(Price("a", "2026-01-02T08:00", 90, "shop_repair", "bay-props"), Price("b", "2026-02-01T08:00", 80, "shop_repair"));
        Assert.Equal(90, office.PriceOn(new DateOnly(2026, 3, 1), PricedThing.ShopRepair, "bay-props")!.Money.Amount);
        Assert.Equal(80, office.PriceOn(new DateOnly(2026, 3, 1), PricedThing.ShopRepair, "other-props")!.Money.Amount);
        Assert.Equal(80, office.PriceOn(new DateOnly(2026, 3, 1), PricedThing.ShopRepair)!.Money.Amount);
    }

    [Fact]
    public void A_price_that_was_taken_back_counts_no_more()
    {
        var office = Of(Price("a", "2026-01-02T08:00", 90), new Retract(Dock.At("2026-01-03T08:00", "back"), Dock.Id("a"), "typed_wrong", Office: true));
        Assert.Empty(office.Prices);
    }

    [Fact]
    public void An_entry_is_let_through_once() => Assert.Equal(
        [Dock.Id("kept back")],
        Of(
            new ReleaseQuarantinedEntry(Dock.At("2026-01-02T08:00", "a"), Dock.Id("kept back")),
            new ReleaseQuarantinedEntry(Dock.At("2026-01-02T08:01", "b"), Dock.Id("kept back"))).Released);

    private static OfficeRecord Of(params ICommand[] records) => OfficeRecord.Of(new Fleet().With(records).Log(StreamName.Operator));

    private static SetPrice Price(string label, string time, decimal amount, string what = "labour_hour", string? item = null) =>
        new(Dock.At(time, label), what, amount, "NZD", item);
}
