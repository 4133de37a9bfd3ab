using FleetWake.Reports.Digests;

namespace FleetWake.Reports.Tests.Digests;

/// <summary>ISO 8601 weeks: the first week of a year holds its first Thursday. Pairs from memory of the standard's own kind of example, each checkable in a wall calendar.</summary>
public sealed class WeekPeriodTests
{
    private static readonly TimeZoneInfo Auckland = TimeZoneInfo.FindSystemTimeZoneById("Pacific/Auckland");
    private static readonly TimeZoneInfo Oslo = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");

    [Theory]
    [InlineData(2005, 1, 1, "2004-W53")]
    [InlineData(2008, 12, 29, "2009-W01")]
    [InlineData(2010, 1, 3, "2009-W53")]
    [InlineData(2026, 5, 4, "2026-W19")]
    public void A_day_lies_in_its_iso_week(int year, int month, int day, string period) =>
        Assert.Equal(period, WeekPeriod.Of(new DateOnly(year, month, day)));

    [Theory]
    [InlineData("2026-05-03T23:59:00+12:00", "2026-W18")] // Sunday
    [InlineData("2026-05-04T05:59:00+12:00", "2026-W18")] // Monday before six
    [InlineData("2026-05-04T06:00:00+12:00", "2026-W19")]
    [InlineData("2026-05-10T12:00:00+12:00", "2026-W19")]
    [InlineData("2026-05-03T18:00:00Z", "2026-W19")] // the same moment by another clock
    public void A_weeks_digest_is_due_from_monday_six_by_the_operators_clock(string moment, string period) =>
        Assert.Equal(period, WeekPeriod.DueAt(DateTimeOffset.Parse(moment, System.Globalization.CultureInfo.InvariantCulture), Auckland, DigestSchedule.Usual));

    [Theory]
    [InlineData("2026-05-08T14:59:00+02:00", "2026-W18")]
    [InlineData("2026-05-08T15:00:00+02:00", "2026-W19")] // Friday
    [InlineData("2026-05-11T09:00:00+02:00", "2026-W19")]
    public void An_operator_may_have_it_on_another_day(string moment, string period) =>
        Assert.Equal(period, WeekPeriod.DueAt(DateTimeOffset.Parse(moment, System.Globalization.CultureInfo.InvariantCulture), Oslo, new DigestSchedule(DayOfWeek.Friday, new TimeOnly(15, 0))));

    [Fact]
    public void A_time_that_the_clocks_jump_over_is_due_just_after_the_gap_and_one_that_comes_twice_the_first_time()
    {
        var sunday = new DigestSchedule(DayOfWeek.Sunday, new TimeOnly(2, 30));
        Assert.Equal(DateTimeOffset.Parse("2026-03-29T01:30:00Z"), WeekPeriod.DueMoment("2026-W13", Oslo, sunday)); // 03:30 summer time
        Assert.Equal(DateTimeOffset.Parse("2026-10-25T00:30:00Z"), WeekPeriod.DueMoment("2026-W43", Oslo, sunday)); // 02:30 summer time
    }

    [Fact]
    public void The_weeks_between_two_go_over_the_end_of_a_long_year()
    {
        Assert.Equal(["2020-W52", "2020-W53", "2021-W01"], WeekPeriod.Between("2020-W51", "2021-W02"));
        Assert.Empty(WeekPeriod.Between("2021-W01", "2021-W02"));
        Assert.Empty(WeekPeriod.Between("2021-W02", "2021-W01"));
    }

    public static TheoryData<string, string> Schedules => new()
    {
        { "Monday", "06:00" },
        { "Sunday", "02:30" },
        { "Monday", "00:00" },
        { "Saturday", "23:59" },
    };

    [Theory]
    [MemberData(nameof(Schedules))]
    public void In_every_zone_from_2020_to_2040_each_week_comes_due_once_in_order_at_its_own_moment(string day, string time)
    {
        var schedule = new DigestSchedule(Enum.Parse<DayOfWeek>(day), TimeOnly.Parse(time, System.Globalization.CultureInfo.InvariantCulture));
        string[] weeks = [.. WeekPeriod.Between("2019-W52", "2041-W01")];
        Assert.Equal(1096, weeks.Length);
        var zones = TimeZoneInfo.GetSystemTimeZones();
        Assert.True(zones.Count > 300, "this system has hardly any zones");
        Parallel.ForEach(zones, zone =>
        {
            var before = DateTimeOffset.MinValue;
            foreach (var week in weeks)
            {
                var due = WeekPeriod.DueMoment(week, zone, schedule);
                Assert.True(due > before, $"{zone.Id} {week} is not due after the week before");
                before = due;
                Assert.Equal(week, WeekPeriod.DueAt(due, zone, schedule));
                Assert.Equal(week, WeekPeriod.DueAt(due.AddDays(6), zone, schedule));
                Assert.True(string.CompareOrdinal(WeekPeriod.DueAt(due.AddTicks(-1), zone, schedule), week) < 0, $"{zone.Id} {week} is due before its moment");
            }
        });
    }
}
