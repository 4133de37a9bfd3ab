using System.Globalization;
using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Entries;

public class A_phones_clock
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 3, 0, 0, 0, TimeSpan.Zero); // noon in Auckland

    [Fact]
    public void A_phone_three_days_ahead_has_three_days_taken_off_before_its_date_is_judged()
    {
        var kept = Keep("2026-05-06T11:00:00+12:00", Noon.AddDays(3));
        Assert.Equal(new DateOnly(2026, 5, 3), kept.Date());
        Assert.Equal(new DateTimeOffset(2026, 5, 3, 11, 0, 0, TimeSpan.FromHours(12)), kept.Happened());
        Assert.Equal("2026-05-06T11:00:00+12:00", kept.HappenedAt.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));
        Assert.Equal(3 * 86400, kept.ClockAheadSeconds);
    }

    [Fact]
    public void A_phone_that_lost_its_battery_and_lives_in_1970_is_understood() =>
        Assert.Equal(new DateOnly(2026, 5, 3), Keep("1970-01-01T12:30:00+12:00", new DateTimeOffset(1970, 1, 1, 1, 0, 0, TimeSpan.Zero)).Date());

    [Fact]
    public void A_phone_behind_does_not_make_the_future_out_of_now() =>
        Assert.Equal(new DateOnly(2026, 5, 3), Keep("2026-05-03T10:55:00+12:00", Noon.AddHours(-1)).Date());

    [Fact]
    public void What_a_phone_behind_says_of_later_than_now_is_refused() =>
        Refused("2026-05-03T11:30:00+12:00", Noon.AddHours(-1), "in_the_future"); // 12:30 by a right clock

    [Fact]
    public void A_small_difference_is_travel_time()
    {
        Assert.Equal(0, Keep("2026-05-03T11:00:00+12:00", Noon.AddSeconds(120)).ClockAheadSeconds);
        Assert.Equal(0, Keep("2026-05-03T11:00:00+12:00", Noon.AddSeconds(-120)).ClockAheadSeconds);
        Assert.Equal(121, Keep("2026-05-03T11:00:00+12:00", Noon.AddSeconds(121)).ClockAheadSeconds);
    }

    [Fact]
    public void Five_minutes_ahead_of_the_server_is_still_now()
    {
        Keep("2026-05-03T12:05:00+12:00", null);
        Refused("2026-05-03T12:06:00+12:00", null, "in_the_future");
    }

    [Theory]
    [InlineData(9999)]
    [InlineData(1)]
    public void A_clock_that_is_no_clock_is_a_refusal_and_no_crash(int year) =>
        Refused("2026-05-03T11:00:00+12:00", new DateTimeOffset(year, 6, 1, 0, 0, 0, TimeSpan.Zero), year > 2026 ? "too_early" : "in_the_future");

    private static Entry Keep(string happenedAt, DateTimeOffset? sentAt) =>
        Assert.IsType<Decision.Keep>(ReadHours.Decide(Hours(happenedAt), new Arrival("phone-1", Noon, sentAt))).Facts[0].Fact.Entry;

    private static void Refused(string happenedAt, DateTimeOffset? sentAt, string reason) =>
        Spec.Given().When(Hours(happenedAt), new Arrival("phone-1", Noon, sentAt)).ThenRefuses("/entry/happenedAt", reason);

    private static ReadHours Hours(string happenedAt) => new(new Stamp(Dock.Id("a"), "mech-1", happenedAt, Dock.Zone), "e1", 1);
}
