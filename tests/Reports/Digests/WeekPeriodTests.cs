using FleetWake.Reports.Digests;

namespace FleetWake.Reports.Tests.Digests;

/// <summary>ISO 8601 weeks: the first week of a year holds its first Thursday. Pairs from memory of the standard's own kind of example, each checkable in a wall calendar.</summary>
public sealed class WeekPeriodTests
{
    [Theory]
    [InlineData(2005, 1, 1, "2004-W53")]
    [InlineData(2008, 12, 29, "2009-W01")]
    [InlineData(2010, 1, 3, "2009-W53")]
    [InlineData(2026, 5, 4, "2026-W19")]
    public void A_day_lies_in_its_iso_week(int year, int month, int day, string period) =>
        Assert.Equal(period, WeekPeriod.Of(new DateOnly(year, month, day)));

    [Theory]
    [InlineData("2026-05-03T23:59:00", "2026-W18")] // Sunday
    [InlineData("2026-05-04T05:59:00", "2026-W18")] // Monday before six
    [InlineData("2026-05-04T06:00:00", "2026-W19")]
    [InlineData("2026-05-10T12:00:00", "2026-W19")]
    public void A_weeks_digest_is_due_from_monday_six_by_the_operators_clock(string local, string period) =>
        Assert.Equal(period, WeekPeriod.DueAt(DateTime.Parse(local, System.Globalization.CultureInfo.InvariantCulture)));
}
