using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;

namespace FleetWake.Logbook.Tests.Office;

public class Records_of_the_office
{
    private const string Time = "2026-01-02T08:00";
    private static readonly OpenDock Opened = new(Dock.At(Time, "dock"), "jetty", "The Jetty", Dock.Zone, "brackish", "gravel");
    private static readonly SetSchedule Schedule = new(Dock.At(Time, "schedule"), "weekly_wear", "sunday", "23:59");
    private static readonly SetPrice Price = new(Dock.At(Time, "price"), "part", 1.25m, "NZD", "pin");

    [Fact]
    public void Each_is_kept_on_the_operators_stream_and_holds_for_nothing()
    {
        Kept(Opened, new DockOpened(Dock.Kept(Opened.Entry!), "jetty", "The Jetty", Dock.Zone, WaterType.Brackish, BottomKind.Gravel));
        Kept(Opened with { Water = null, Bottom = null }, new DockOpened(Dock.Kept(Opened.Entry!), "jetty", "The Jetty", Dock.Zone, null, null));
        Kept(new InvitePerson(Dock.At(Time, "a"), "mech-2", "mechanic"), new PersonInvited(Dock.Kept(Dock.At(Time, "a")), "mech-2", Role.Mechanic));
        Kept(new GiveRole(Dock.At(Time, "a"), "mech-2", "administrator"), new RoleGiven(Dock.Kept(Dock.At(Time, "a")), "mech-2", Role.Administrator));
        Kept(new EnrolDevice(Dock.At(Time, "a"), "phone-4", "jetty"), new DeviceEnrolled(Dock.Kept(Dock.At(Time, "a")), "phone-4", "jetty"));
        Kept(new RevokeDevice(Dock.At(Time, "a"), "phone-4"), new DeviceRevoked(Dock.Kept(Dock.At(Time, "a")), "phone-4"));
        Kept(Schedule, new ScheduleSet(Dock.Kept(Schedule.Entry!), ScheduledDigest.WeeklyWear, DayOfWeek.Sunday, new TimeOnly(23, 59)));
        Kept(Price, new PriceSet(Dock.Kept(Price.Entry!), PricedThing.Part, "pin", 1.25m, "NZD"));
        Kept(new ReleaseQuarantinedEntry(Dock.At(Time, "a"), Dock.Id("b")), new QuarantinedEntryReleased(Dock.Kept(Dock.At(Time, "a")), Dock.Id("b")));
    }

    [Fact]
    public void A_dock_has_a_name_and_a_zone() => Spec.EachIsRefused(
        (Opened with { Dock = null }, "/dock", "missing"),
        (Opened with { Name = " " }, "/name", "missing"),
        (Opened with { Zone = "Auckland" }, "/zone", "unknown_zone"),
        (Opened with { Water = "tea" }, "/water", "unknown_word"),
        (Opened with { Bottom = "glass" }, "/bottom", "unknown_word"));

    [Fact]
    public void People_are_named_by_id_and_do_something() => Spec.EachIsRefused(
        (new InvitePerson(Dock.At(Time, "a"), "Ann Other", "mechanic"), "/person", "not_an_id"),
        (new InvitePerson(Dock.At(Time, "a"), "mech-2", "captain"), "/role", "unknown_word"));

    [Fact]
    public void A_device_is_given_to_a_dock() => Spec.EachIsRefused(
        (new EnrolDevice(Dock.At(Time, "a"), "phone-4", null), "/dock", "missing"),
        (new EnrolDevice(Dock.At(Time, "a"), null, "jetty"), "/device", "missing"));

    [Fact]
    public void A_schedule_has_a_digest_a_weekday_and_a_time() => Spec.EachIsRefused(
        (Schedule with { Digest = "daily" }, "/digest", "unknown_word"),
        (Schedule with { Weekday = "Monday" }, "/weekday", "unknown_word"),
        (Schedule with { LocalTime = null }, "/localTime", "missing"),
        (Schedule with { LocalTime = "24:00" }, "/localTime", "not_a_time"),
        (Schedule with { LocalTime = "6:30" }, "/localTime", "not_a_time"));

    [Fact]
    public void A_price_of_a_part_says_of_which() => Spec.EachIsRefused(
        (Price with { Item = null }, "/item", "missing"),
        (Price with { What = "luck" }, "/what", "unknown_word"),
        (Price with { Amount = null }, "/amount", "missing"));

    [Fact]
    public void An_entry_that_is_let_through_is_named() =>
        Spec.EachIsRefused((new ReleaseQuarantinedEntry(Dock.At(Time, "a"), Guid.Empty), "/released", "empty_id"), (new ReleaseQuarantinedEntry(Dock.At(Time, "a"), null), "/released", "missing"));

    private static void Kept<T>(T command, IFact fact)
        where T : ICommand<T> =>
        Spec.Given().When(command).Then(("operator", fact)).Naming();
}
