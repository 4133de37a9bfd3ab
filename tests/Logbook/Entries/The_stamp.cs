using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Entries;

public class The_stamp
{
    private static readonly Stamp Good = new(Dock.Id("a"), "mech-1", "2026-05-03T10:15:00+12:00", "Pacific/Auckland", 7);

    [Fact]
    public void It_is_kept_with_device_and_arrival()
    {
        var kept = Keep(Good, new Arrival("phone-9", new DateTimeOffset(2026, 5, 3, 1, 0, 0, TimeSpan.Zero), null));
        var at = new DateTimeOffset(2026, 5, 3, 10, 15, 0, TimeSpan.FromHours(12));
        Assert.Equal(
            new Entry(Dock.Id("a"), "mech-1", "phone-9", 7, at, "Pacific/Auckland", at, new DateTimeOffset(2026, 5, 3, 1, 0, 0, TimeSpan.Zero), 0, null),
            kept);
        Assert.Equal(TimeSpan.FromHours(12), kept.HappenedAt.Offset);
    }

    [Fact]
    public void Each_part_is_needed() => Refused(
        (Good with { Id = null }, "/entry/id", "missing"),
        (Good with { Id = Guid.Empty }, "/entry/id", "empty_id"),
        (Good with { By = null }, "/entry/by", "missing"),
        (Good with { By = "a person" }, "/entry/by", "not_an_id"),
        (Good with { HappenedAt = null }, "/entry/happenedAt", "missing"),
        (Good with { Zone = null }, "/entry/zone", "missing"));

    [Theory]
    [InlineData("yesterday")]
    [InlineData("2026-05-03")]
    [InlineData("03/05/2026 10:15")]
    [InlineData("2026-13-03T10:15")]
    [InlineData("2026-02-29T10:15")]
    [InlineData("2026-05-03T25:15")]
    [InlineData("2026-05-03T10:15+1200")]
    [InlineData("2026-05-03T10:15+24:00")]
    [InlineData("2026-05-03T10:15+14:30")]
    [InlineData("2026-05-03T10:15+12:75")]
    [InlineData("2026-05-03T10:15+99:99")]
    [InlineData("2026-05-03T10:15+١٢:٠٠")]
    [InlineData("٢٠٢٦-05-03T10:15")]
    [InlineData("2026-05-03T10:15\n")]
    public void What_is_no_time_is_refused(string text) => Refused((Good with { HappenedAt = text }, "/entry/happenedAt", "not_a_time"));

    [Theory]
    [InlineData("1949-12-31T10:15", "too_early")]
    [InlineData("0001-01-01T00:00", "too_early")]
    [InlineData("0001-01-01T00:00+12:00", "too_early")]
    [InlineData("0001-01-01T00:00Z", "too_early")]
    [InlineData("9999-12-31T23:59Z", "in_the_future")]
    [InlineData("9999-12-31T23:59", "in_the_future")]
    [InlineData("2062-05-03T10:15", "in_the_future")]
    public void A_year_that_cannot_be_is_refused(string text, string reason) => Refused((Good with { HappenedAt = text }, "/entry/happenedAt", reason));

    [Theory]
    [InlineData("Auckland")]
    [InlineData("NZST")]
    [InlineData("Pacific/Atlantis")]
    [InlineData("../../etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("/usr/share/zoneinfo/Pacific/Auckland")]
    [InlineData("Pacific/../Pacific/Auckland")]
    [InlineData("posix/Pacific/Auckland")]
    [InlineData("right/Pacific/Auckland")]
    [InlineData("Pacific/")]
    public void A_zone_is_a_name_of_the_zone_database(string zone) => Refused((Good with { Zone = zone }, "/entry/zone", "unknown_zone"));

    [Fact]
    public void An_amendment_says_when_it_was_typed_and_does_not_name_itself() => Refused(
        (Good with { Amends = Dock.Id("b") }, "/entry/enteredAt", "missing"),
        (Good with { Amends = Good.Id, EnteredAt = Good.HappenedAt }, "/entry/amends", "amends_itself"),
        (Good with { Amends = Guid.Empty, EnteredAt = Good.HappenedAt }, "/entry/amends", "empty_id"),
        (Good with { EnteredAt = "just now" }, "/entry/enteredAt", "not_a_time"),
        (Good with { EnteredAt = "2062-05-03T10:15" }, "/entry/enteredAt", "in_the_future"));

    private static Entry Keep(Stamp stamp, Arrival arrival) =>
        Assert.IsType<Decision.Keep>(ReadHours.Decide(new ReadHours(stamp, "e1", 1), arrival)).Facts[0].Fact.Entry;

    private static void Refused(params (Stamp Stamp, string Field, string Reason)[] cases) =>
        Spec.EachIsRefused([.. cases.Select(c => (new ReadHours(c.Stamp, "e1", 1), c.Field, c.Reason))]);
}
