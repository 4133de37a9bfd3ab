using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;

namespace FleetWake.Logbook.Tests.Schedules;

/// <summary>Both changes of the clocks, the 31st and the 29th of February, in every zone that this machine knows, 2020 to 2040.</summary>
public class In_every_zone_until_2040
{
    private static readonly HashSet<DateOnly> None = [];
    private static readonly (DateOnly From, DateOnly To) Years = (new(2020, 1, 1), new(2040, 12, 31));

    public static TheoryData<string> Schedules => [.. All.Keys];

    private static Dictionary<string, DigestSchedule> All => new(StringComparer.Ordinal)
    {
        ["Monday 07:00"] = Usual,
        ["Sunday 02:30"] = Usual with { Weekdays = [DayOfWeek.Sunday], Time = new(2, 30) },
        ["Saturday 23:59"] = Usual with { Weekdays = [DayOfWeek.Saturday], Time = new(23, 59) },
        ["daily 00:00"] = Usual with { Rhythm = DigestRhythm.Daily, Time = new(0, 0) },
        ["daily 02:30"] = Usual with { Rhythm = DigestRhythm.Daily, Time = new(2, 30) },
        ["the 31st 02:00"] = Usual with { Rhythm = DigestRhythm.Monthly, MonthDay = 31, Time = new(2, 0) },
        ["the 29th 01:00"] = Usual with { Rhythm = DigestRhythm.Monthly, MonthDay = 29, Time = new(1, 0) },
        ["on three days"] = Usual with { Weekdays = [DayOfWeek.Monday, DayOfWeek.Thursday, DayOfWeek.Friday], Time = new(2, 30) },
        ["by a line"] = Usual with { Rhythm = DigestRhythm.Cron, Cron = CronDays.Read("0 15 2 L * ?", out _) },
        ["with a season"] = Usual with { Season = new("05-01", "09-30") },
    };

    private static DigestSchedule Usual => DigestSchedule.Usual(ScheduledDigest.WeeklyWear);

    [Theory]
    [MemberData(nameof(Schedules))]
    public void Each_period_comes_once_in_order_and_never_before_its_time_by_the_clock_on_the_wall(string name)
    {
        var schedule = All[name];
        var zones = TimeZoneInfo.GetSystemTimeZones();
        Assert.True(zones.Count > 300, "this system has hardly any zones");
        var (seen, jumped) = (0L, 0L);
        Parallel.ForEach(zones, zone =>
        {
            var occasions = Occasions.Planned(schedule, zone, Years.From, Years.To, None).ToList();
            Interlocked.Add(ref seen, occasions.Count);
            Assert.Equal(occasions.Count, occasions.Select(o => o.Period).Distinct(StringComparer.Ordinal).Count());
            for (var n = 0; n < occasions.Count; n++)
            {
                var occasion = occasions[n];

                // The clock on the wall shows that time, or has jumped over it, and did not a moment before.
                var wall = TimeZoneInfo.ConvertTime(occasion.At, zone).DateTime;
                var asked = occasion.Day.ToDateTime(schedule.At);
                if (wall < asked || TimeZoneInfo.ConvertTime(occasion.At.AddTicks(-1), zone).DateTime >= asked) Assert.Fail($"{zone.Id} {occasion.Period} {wall}");
                if (wall != asked) Interlocked.Increment(ref jumped);
                if (n > 0 && occasion.At <= occasions[n - 1].At) Assert.Fail($"{zone.Id} {occasion.Period} is not due after {occasions[n - 1].Period}");
            }
        });

        // Said so that a change that thins the test out is seen.
        Assert.True(seen > 100_000, $"{seen} occasions");
        if (schedule is { Rhythm: DigestRhythm.Daily }) Assert.True(jumped > 50, $"{jumped} gaps");
    }

    /// <summary>Holidays by dice, some of them weeks long: they put off, and let another stand for both; they turn nothing round and lose no news.</summary>
    [Theory]
    [MemberData(nameof(Schedules))]
    public void With_holidays_each_still_comes_once_in_order_on_a_day_that_is_none_and_no_later_than_the_next_such_day(string name)
    {
        var (schedule, dice, holidays) = (All[name], new Random(20261130), new HashSet<DateOnly>());
        for (var day = Years.From; day <= Years.To; day = day.AddDays(dice.Next(1, 60)))
            for (var n = dice.Next(20) == 0 ? dice.Next(8, 30) : dice.Next(1, 4); n > 0; n--) holidays.Add(day.AddDays(n));
        var pushed = 0L;
        Parallel.ForEach(TimeZoneInfo.GetSystemTimeZones().Where((_, n) => n % 5 == 0), zone =>
        {
            var sent = Occasions.Planned(schedule, zone, Years.From, Years.To, holidays).ToList();
            Assert.Equal(sent.Count, sent.Select(o => o.Period).Distinct(StringComparer.Ordinal).Count());
            for (var n = 0; n < sent.Count; n++)
                if (holidays.Contains(sent[n].Day) || (n > 0 && (sent[n].At <= sent[n - 1].At || sent[n].Day <= sent[n - 1].Day))) Assert.Fail($"{zone.Id} {sent[n].Period} {sent[n].Day}");

            // After each day on which one was to go out there is one by the next day that is no holiday.
            var days = sent.Select(o => o.Day).ToHashSet();
            foreach (var planned in Occasions.Planned(schedule, zone, Years.From, Years.To, None).Select(o => o.Day))
            {
                var (open, any) = (planned, false);
                while (holidays.Contains(open)) open = open.AddDays(1);
                for (var day = planned; day <= open && !any; day = day.AddDays(1)) any = days.Contains(day);
                if (open != planned) Interlocked.Increment(ref pushed);
                if (!any && open <= Years.To) Assert.Fail($"{zone.Id}: nothing went out for {planned}");
            }
        });
        Assert.True(pushed > 500, $"{pushed} holidays");
    }

    [Fact]
    public void The_newest_at_any_moment_is_the_last_that_was_due()
    {
        foreach (var zone in TimeZoneInfo.GetSystemTimeZones().Where((_, n) => n % 7 == 0))
        {
            var line = new ScheduleLine([(DateTimeOffset.MinValue, Usual with { Weekdays = [DayOfWeek.Sunday], Time = new(2, 30) })], zone, None);
            foreach (var occasion in Occasions.Planned(line.Present, zone, new(2026, 1, 1), new(2027, 12, 31), None))
            {
                Assert.Equal(occasion, line.Newest(occasion.At));
                Assert.Equal(occasion, line.Newest(occasion.At.AddDays(6)));
                Assert.True(line.Newest(occasion.At.AddTicks(-1))!.At < occasion.At, $"{zone.Id} {occasion.Period}");
            }
        }
    }
}
