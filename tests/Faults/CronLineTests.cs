using FleetWake.Logbook.Schedules;
using Quartz;

namespace FleetWake.Faults.Tests;

/// <summary>Our reader of cron lines against Quartz's own (version as referenced), which the lines are written for: the same days over four years.</summary>
public sealed class CronLineTests
{
    public static TheoryData<string> Lines =>
    [
        "0 30 6 ? * MON-FRI", "0 0 7 L * ?", "0 0 7 LW * ?", "0 0 7 L-2 * ?", "0 0 7 15W * ?", "0 0 7 1W * ?", "0 0 7 31 * ?", "0 0 7 29 2 ?", "0 5 23 1,15 * ?",
        "0 0 7 1/10 * ?", "0 0 7 5-20/5 JAN-MAR ?", "0 0 7 ? * 2#1", "0 0 7 ? * FRI#5", "0 0 7 ? * 6L", "0 0 7 ? 4-9 MON,THU", "0 0 7 ? 10,11,12 SUN", "0 0 7 * * ?", "0 0 7 ? * *",
        "0 0 7 1 */3 ? 2027", "0 0 0 ? * SAT 2026-2028",
    ];

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_names_the_same_days_as_for_Quartz(string line)
    {
        var ours = CronDays.Read(line, out var why);
        Assert.Null(why);
        var theirs = new CronExpression(line, TimeZoneInfo.Utc);
        var (from, until) = (new DateOnly(2025, 12, 31), new DateOnly(2029, 12, 31));
        var expected = new List<DateOnly>();
        for (var at = theirs.GetNextValidTimeAfter(new DateTimeOffset(from.ToDateTime(new TimeOnly(23, 59, 59)), TimeSpan.Zero)); at is { } next && DateOnly.FromDateTime(next.DateTime) <= until; at = theirs.GetNextValidTimeAfter(next))
        {
            Assert.Equal(ours!.Time, TimeOnly.FromDateTime(next.DateTime));
            expected.Add(DateOnly.FromDateTime(next.DateTime));
        }

        Assert.NotEmpty(expected);
        Assert.Equal(expected, Enumerable.Range(1, until.DayNumber - from.DayNumber).Select(from.AddDays).Where(ours!.Holds));
    }
}
