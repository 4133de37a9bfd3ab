using FleetWake.Logbook.Schedules;

namespace FleetWake.Logbook.Tests.Schedules;

/// <summary>
/// Cron lines as Quartz writes them. Days checked by hand in a calendar of 2026 to 2028; that the same days come out of Quartz's own
/// reader is tested beside the program, where Quartz is at hand.
/// </summary>
public class Lines_for_experts
{
    [Theory]
    [InlineData("0 30 6 ? * MON-FRI", "2026-11-30 2026-12-01 2026-12-02 2026-12-03 2026-12-04 2026-12-07")]
    [InlineData("0 30 6 ? * FRI-MON", "2026-11-30 2026-12-04 2026-12-05 2026-12-06 2026-12-07 2026-12-11")]
    [InlineData("0 0 7 L * ?", "2026-11-30 2026-12-31 2027-01-31 2027-02-28 2027-03-31 2027-04-30")]
    [InlineData("0 0 7 ? * 2#1", "2026-12-07 2027-01-04 2027-02-01 2027-03-01 2027-04-05 2027-05-03")]
    [InlineData("0 0 7 ? 1-3 FRIL", "2027-01-29 2027-02-26 2027-03-26 2028-01-28 2028-02-25 2028-03-31")]
    [InlineData("0 0 7 15W * ?", "2026-12-15 2027-01-15 2027-02-15 2027-03-15 2027-04-15 2027-05-14")]
    [InlineData("0 0 7 1/10 DEC ? 2026", "2026-12-01 2026-12-11 2026-12-21 2026-12-31")]
    public void A_line_names_its_days(string line, string days)
    {
        var cron = CronDays.Read(line, out var why);
        Assert.Null(why);
        var expected = days.Split(' ');
        Assert.Equal(expected, Enumerable.Range(0, 600).Select(n => new DateOnly(2026, 11, 30).AddDays(n)).Where(cron!.Holds).Take(expected.Length == 4 ? 7 : 6).Select(Periods.Day));
    }

    [Theory]
    [InlineData("0 0 7 30 2 ?", "2026-11-30", null)]
    [InlineData("0 0 7 L-30 2,4 ?", "2026-11-30", null)]
    [InlineData("0 0 7 ? * MON 2026", "2026-12-28", "2026-12-28")]
    [InlineData("0 0 7 ? * MON 2026", "2026-12-29", null)]
    [InlineData("0 0 7 29 2 ?", "2026-11-30", "2028-02-29")]
    [InlineData("0 0 7 29 2 ?", "2096-03-01", "2104-02-29")] // 2100 is no leap year
    public void A_line_that_names_no_day_within_eight_years_is_seen(string line, string from, string? first) =>
        Assert.Equal(first, CronDays.Read(line, out _)!.FirstFrom(DateOnly.ParseExact(from, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)) is { } day ? Periods.Day(day) : null);

    [Theory]
    [InlineData("30 6 * * 1", "six or seven fields")]
    [InlineData("0 */5 * ? * *", "once a day")]
    [InlineData("0 0 7,19 ? * MON", "once a day")]
    [InlineData("0 0 24 ? * MON", "once a day")]
    [InlineData("10 0 7 ? * MON", "second")]
    [InlineData("0 0 7 * * *", "just one")]
    [InlineData("0 0 7 ? * ?", "just one")]
    [InlineData("0 0 7 32 * ?", "day of the month")]
    [InlineData("0 0 7 ? 13 MON", "month")]
    [InlineData("0 0 7 ? * MOON", "day of the week")]
    [InlineData("0 0 7 ? * 2#9", "number of the week")]
    [InlineData("", "six or seven fields")]
    public void One_that_cannot_be_is_refused_with_the_reason(string line, string reason)
    {
        Assert.Null(CronDays.Read(line, out var why));
        Assert.Contains(reason, why, StringComparison.Ordinal);
    }
}
