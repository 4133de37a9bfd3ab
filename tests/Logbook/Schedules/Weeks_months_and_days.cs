using FleetWake.Logbook.Schedules;

namespace FleetWake.Logbook.Tests.Schedules;

/// <summary>ISO 8601 weeks: the first week of a year holds its first Thursday. Pairs from memory of the standard's own kind of example, each checkable in a wall calendar.</summary>
public class Weeks_months_and_days
{
    [Theory]
    [InlineData(2005, 1, 1, "2004-W53")]
    [InlineData(2008, 12, 29, "2009-W01")]
    [InlineData(2010, 1, 3, "2009-W53")]
    [InlineData(2026, 5, 4, "2026-W19")]
    public void A_day_lies_in_its_iso_week(int year, int month, int day, string week)
    {
        Assert.Equal(week, Periods.Week(new DateOnly(year, month, day)));
        Assert.True(Periods.Monday(week) <= new DateOnly(year, month, day) && Periods.Monday(week).AddDays(7) > new DateOnly(year, month, day));
    }

    [Theory]
    [InlineData("2026-W53", "2026-12-28")]
    [InlineData("2026-11", "2026-11-01")]
    [InlineData("2026-11-30", "2026-11-30")]
    [InlineData("2025-W53", null)] // a year of 52 weeks
    [InlineData("2026-W00", null)]
    [InlineData("2026-02-30", null)]
    [InlineData("2026-11-30T14:05Z-1", null)]
    [InlineData("", null)]
    public void A_period_begins_on_a_day_and_what_is_none_does_not(string period, string? day) =>
        Assert.Equal(day, Periods.FirstDay(period) is { } first ? Periods.Day(first) : null);

    [Theory]
    [InlineData("2026-W07", "week 7")]
    [InlineData("2026-12", "December 2026")]
    [InlineData("2026-11-30", "30 November 2026")]
    public void A_period_is_named_as_people_do(string period, string prose) => Assert.Equal(prose, Periods.Prose(period));
}
