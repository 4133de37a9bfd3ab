using System.Globalization;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;

namespace FleetWake.Logbook.Tests.Schedules;

/// <summary>Days and moments of a schedule. The clocks of Oslo and Auckland are those of the zone database of this machine.</summary>
public class When_a_digest_goes_out
{
    private static readonly TimeZoneInfo Auckland = TimeZoneInfo.FindSystemTimeZoneById("Pacific/Auckland");
    private static readonly TimeZoneInfo Oslo = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");
    private static readonly HashSet<DateOnly> None = [];

    private static DigestSchedule Weekly(params DayOfWeek[] days) => DigestSchedule.Usual(ScheduledDigest.WeeklyWear) with { Weekdays = days };

    [Theory]
    [InlineData("2026-05-03T23:59:00+12:00", "2026-W18")] // Sunday
    [InlineData("2026-05-04T06:59:00+12:00", "2026-W18")] // Monday before seven
    [InlineData("2026-05-04T07:00:00+12:00", "2026-W19")]
    [InlineData("2026-05-10T12:00:00+12:00", "2026-W19")]
    [InlineData("2026-05-03T19:00:00Z", "2026-W19")] // the same moment by another clock
    public void As_long_as_nobody_sets_anything_it_is_due_on_monday_at_seven(string moment, string period) =>
        Assert.Equal(period, Line(Auckland, DigestSchedule.Usual(ScheduledDigest.WeeklyWear)).Newest(At(moment))!.Period);

    [Fact]
    public void A_time_that_the_clocks_jump_over_falls_on_the_first_moment_after_and_one_that_comes_twice_on_the_first()
    {
        Assert.Equal(At("2026-03-29T01:00:00Z"), LocalMoment.Of(new(2026, 3, 29), new(2, 30), Oslo)); // 03:00 summer time
        Assert.Equal(At("2026-10-25T00:30:00Z"), LocalMoment.Of(new(2026, 10, 25), new(2, 30), Oslo)); // 02:30 summer time
    }

    [Fact]
    public void On_several_days_of_the_week_or_daily_its_period_is_the_day()
    {
        Assert.Equal(["2026-11-30", "2026-12-03"], Planned(Weekly(DayOfWeek.Monday, DayOfWeek.Thursday), "2026-11-30", "2026-12-06"));
        Assert.Equal(["2026-11-30", "2026-12-01"], Planned(Weekly() with { Rhythm = DigestRhythm.Daily }, "2026-11-30", "2026-12-01"));
    }

    [Fact]
    public void On_the_thirty_first_it_goes_out_on_the_last_day_of_a_shorter_month_and_on_the_thirty_first_again_after_it()
    {
        var end = Weekly() with { Rhythm = DigestRhythm.Monthly, MonthDay = 31 };
        Assert.Equal(
            ["2028-01-31", "2028-02-29", "2028-03-31", "2028-04-30"],
            Occasions.Planned(end, Oslo, new(2028, 1, 1), new(2028, 4, 30), None).Select(o => Periods.Day(o.Day)));
        Assert.Equal(["2028-01", "2028-02", "2028-03", "2028-04"], Planned(end, "2028-01-01", "2028-04-30"));
    }

    [Fact]
    public void The_analysts_pack_is_of_the_month_that_has_ended() =>
        Assert.Equal(["2026-11", "2026-12"], Planned(DigestSchedule.Usual(ScheduledDigest.AnalystPack), "2026-12-01", "2027-01-31"));

    [Fact]
    public void Out_of_season_the_first_of_its_days_stands_for_the_month()
    {
        var summer = Weekly(DayOfWeek.Monday) with { Season = new SeasonDays("05-01", "09-30") };
        Assert.Equal(["2026-W39", "2026-W40", "2026-10", "2026-11", "2026-12"], Planned(summer, "2026-09-21", "2026-12-31"));
        Assert.Equal(["2027-04", "2027-W18", "2027-W19"], Planned(summer, "2027-04-01", "2027-05-11"));

        // In the south the season goes over the turn of the year.
        var south = summer with { Season = new SeasonDays("10-15", "04-15") };
        Assert.Equal(["2026-W53", "2027-W01"], Planned(south, "2026-12-28", "2027-01-08"));
        Assert.Equal(["2027-06"], Planned(south, "2027-06-01", "2027-06-30"));
    }

    [Fact]
    public void A_holiday_puts_a_weekly_digest_off_to_the_next_day_that_is_none_and_it_stays_that_weeks()
    {
        HashSet<DateOnly> easter = [new(2027, 3, 26), new(2027, 3, 29), new(2027, 3, 30)];
        Assert.Equal(["2027-W13 2027-03-31"], Occasions.Planned(Weekly(DayOfWeek.Monday), Oslo, new(2027, 3, 29), new(2027, 4, 4), easter).Select(o => $"{o.Period} {Periods.Day(o.Day)}"));
        Assert.Empty(Occasions.Planned(Weekly(DayOfWeek.Monday) with { Holidays = HolidayRule.Skip }, Oslo, new(2027, 3, 29), new(2027, 4, 4), easter));
        Assert.Equal(["2027-03-29"], Occasions.Planned(Weekly(DayOfWeek.Monday) with { Holidays = HolidayRule.Send }, Oslo, new(2027, 3, 29), new(2027, 4, 4), easter).Select(o => Periods.Day(o.Day)));
        Assert.Equal(["2027-03-31"], Occasions.Planned(Weekly() with { Rhythm = DigestRhythm.Daily }, Oslo, new(2027, 3, 29), new(2027, 3, 31), easter).Select(o => o.Period));
    }

    [Fact]
    public void One_of_several_days_waits_for_the_next_day_too_and_where_another_comes_by_then_that_one_stands_for_both()
    {
        // Good Friday, Easter Monday and the day after, of 2027.
        HashSet<DateOnly> easter = [new(2027, 3, 26), new(2027, 3, 29), new(2027, 3, 30)];
        Assert.Equal(["2027-03-25", "2027-03-26 on 2027-03-27", "2027-03-29 on 2027-03-31", "2027-04-01"], Sent(Weekly(DayOfWeek.Monday, DayOfWeek.Thursday, DayOfWeek.Friday), easter));
        Assert.Equal(["2027-03-25", "2027-03-26 on 2027-03-27", "2027-03-31", "2027-04-01"], Sent(Weekly() with { Rhythm = DigestRhythm.Cron, Cron = CronDays.Read("0 0 7 ? * MON-FRI", out _) }, easter));
        Assert.Equal(["2027-03-25", "2027-03-27", "2027-03-28", "2027-03-31", "2027-04-01"], Sent(Weekly() with { Rhythm = DigestRhythm.Daily }, easter));
        Assert.Equal(["2027-03-25", "2027-04-01"], Sent(Weekly(DayOfWeek.Monday, DayOfWeek.Thursday, DayOfWeek.Friday) with { Holidays = HolidayRule.Skip }, easter));

        static IEnumerable<string> Sent(DigestSchedule schedule, HashSet<DateOnly> holidays) =>
            Occasions.Planned(schedule, Oslo, new(2027, 3, 25), new(2027, 4, 1), holidays).Select(o => o.Period == Periods.Day(o.Day) ? o.Period : $"{o.Period} on {Periods.Day(o.Day)}");
    }

    [Fact]
    public void Where_a_yard_is_shut_for_weeks_one_digest_goes_out_on_the_day_it_opens_and_the_next_ones_are_shown()
    {
        HashSet<DateOnly> shut = [.. Enumerable.Range(0, 17).Select(n => new DateOnly(2026, 12, 21).AddDays(n))]; // until Wednesday, 6 January
        Assert.Equal(
            ["2026-W51 2026-12-14", "2027-W01 2027-01-07", "2027-W02 2027-01-11"],
            Occasions.Planned(Weekly(DayOfWeek.Monday), Oslo, new(2026, 12, 14), new(2027, 1, 11), shut).Select(o => $"{o.Period} {Periods.Day(o.Day)}"));
        var monthly = new ScheduleLine([(DateTimeOffset.MinValue, Weekly() with { Rhythm = DigestRhythm.Monthly, MonthDay = 21 })], Oslo, shut);
        Assert.Equal(["2026-12 2027-01-07", "2027-01 2027-01-21"], monthly.Next(At("2027-01-06T12:00:00Z"), 2).Select(o => $"{o.Period} {Periods.Day(o.Day)}"));
        Assert.Equal("2026-12", monthly.Newest(At("2027-01-07T12:00:00Z"))!.Period);
    }

    [Fact]
    public void A_day_that_comes_every_four_years_is_found_before_and_after_it()
    {
        var leap = Line(Oslo, Weekly() with { Rhythm = DigestRhythm.Cron, Cron = CronDays.Read("0 0 7 29 2 ?", out _) });
        Assert.Equal("2028-02-29", leap.Next(At("2024-03-01T12:00:00Z"), 1).Single().Period);
        Assert.Equal("2024-02-29", leap.Newest(At("2028-02-28T12:00:00Z"))!.Period);
    }

    [Fact]
    public void One_that_is_off_does_not_go_out() => Assert.Empty(Planned(Weekly(DayOfWeek.Monday) with { Off = true }, "2026-01-01", "2026-12-31"));

    [Fact]
    public void A_change_sends_no_period_again_and_none_of_before()
    {
        // Set on the Wednesday of W13: to Friday.
        var line = new ScheduleLine(
            [(DateTimeOffset.MinValue, Weekly(DayOfWeek.Monday)), (At("2026-03-25T12:00:00Z"), Weekly(DayOfWeek.Friday))], Oslo, None);
        Assert.Equal("2026-W13", line.Newest(At("2026-03-26T12:00:00Z"))!.Period); // Monday's
        Assert.Equal(
            ["2026-W14 2026-04-03", "2026-W13 2026-03-27", "2026-W13 2026-03-23", "2026-W12 2026-03-16"],
            line.Backwards(At("2026-04-05T12:00:00Z")).Take(4).Select(o => $"{o.Period} {Periods.Day(o.Day)}"));
    }

    [Fact]
    public void The_next_ones_are_those_after_now() =>
        Assert.Equal(["2026-W49", "2026-W50"], Line(Oslo, Weekly(DayOfWeek.Monday)).Next(At("2026-11-24T12:00:00Z"), 2).Select(o => o.Period));

    private static IEnumerable<string> Planned(DigestSchedule schedule, string from, string to) =>
        Occasions.Planned(schedule, Oslo, DateOnly.Parse(from, CultureInfo.InvariantCulture), DateOnly.Parse(to, CultureInfo.InvariantCulture), None).Select(o => o.Period);

    private static ScheduleLine Line(TimeZoneInfo zone, DigestSchedule schedule) => new([(DateTimeOffset.MinValue, schedule)], zone, None);

    private static DateTimeOffset At(string moment) => DateTimeOffset.Parse(moment, CultureInfo.InvariantCulture);
}
