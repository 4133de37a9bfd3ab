using System.Globalization;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;

namespace FleetWake.Logbook.Tests.Schedules;

public class Setting_schedules
{
    private const string Time = "2026-01-02T08:00";
    private static readonly TimeDigest Timed = new(Dock.At(Time, "timed"), "due_list", "weekly", ["thursday", "monday"], LocalTime: "06:30", Dock: "jetty", Zone: Dock.Zone);
    private static readonly SetAlerts Alerts = new(Dock.At(Time, "alerts"), 45, "22:00", "05:30", 20);

    [Fact]
    public void Each_is_kept_on_the_operators_stream()
    {
        Kept(Timed, new DigestTimed(Dock.Kept(Timed.Entry!), ScheduledDigest.DueList, "jetty", DigestRhythm.Weekly, [DayOfWeek.Monday, DayOfWeek.Thursday], null, new TimeOnly(6, 30), null, Dock.Zone, HolidayRule.NextDay, null, null, null, null));
        var line = new TimeDigest(Dock.At(Time, "line"), "weekly_wear", "cron", Cron: " 0 30 6 ?  * MON ", Holidays: "skip", Missed: "all", Off: false);
        Kept(line, new DigestTimed(Dock.Kept(line.Entry!), ScheduledDigest.WeeklyWear, null, DigestRhythm.Cron, null, null, null, "0 30 6 ? * MON", null, HolidayRule.Skip, null, null, MissedRule.All, null));
        var holidays = new SetHolidays(Dock.At(Time, "h"), ["2026-12-26", "2026-12-25", "2026-12-25"]);
        Kept(holidays, new HolidaysSet(Dock.Kept(holidays.Entry!), [new(2026, 12, 25), new(2026, 12, 26)]));
        Kept(Alerts, new AlertsSet(Dock.Kept(Alerts.Entry!), new(22, 0), new(5, 30), 45, 20, null));
    }

    [Fact]
    public void A_schedule_says_what_its_rhythm_needs_and_nothing_else() => Spec.EachIsRefused(
        (Timed with { Digest = "alert" }, "/digest", "not_by_schedule"),
        (Timed with { Digest = "analyst_pack" }, "/rhythm", "monthly_alone"),
        (Timed with { Rhythm = "yearly" }, "/rhythm", "unknown_word"),
        (Timed with { Weekdays = null }, "/weekdays", "too_few"),
        (Timed with { Weekdays = ["monday", "monday"] }, "/weekdays", "named_twice"),
        (Timed with { LocalTime = null }, "/localTime", "missing"),
        (Timed with { LocalTime = "6:30" }, "/localTime", "not_a_time"),
        (Timed with { MonthDay = 3 }, "/monthDay", "not_with_this_rhythm"),
        (Timed with { Rhythm = "monthly", Weekdays = null, MonthDay = 32 }, "/monthDay", "out_of_range"),
        (Timed with { Cron = "0 30 6 ? * MON" }, "/cron", "not_with_this_rhythm"),
        (Timed with { Rhythm = "cron", Weekdays = null, Cron = "0 30 6 ? * MON" }, "/localTime", "not_with_this_rhythm"),
        (Timed with { Rhythm = "cron", Weekdays = null, LocalTime = null, Cron = null }, "/cron", "missing"),
        (Timed with { Rhythm = "cron", Weekdays = null, LocalTime = null, Cron = "* * * * * ?" }, "/cron", "not_a_cron_line"),
        (Timed with { Rhythm = "cron", Weekdays = null, LocalTime = null, Cron = "0 30 6 30 2 ?" }, "/cron", "never"),
        (Timed with { Rhythm = "cron", Weekdays = null, LocalTime = null, Cron = "0 30 6 31 4,6,9,11 ?" }, "/cron", "never"),
        (Timed with { Rhythm = "cron", Weekdays = null, LocalTime = null, Cron = "0 30 6 ? * MON 2020-2025" }, "/cron", "never"),
        (Timed with { Zone = "Auckland" }, "/zone", "unknown_zone"),
        (Timed with { SeasonFrom = "05-01" }, "/seasonUntil", "missing"),
        (Timed with { SeasonFrom = "05-01", SeasonUntil = "9-30" }, "/seasonUntil", "not_a_day"),
        (Timed with { Rhythm = "daily", Weekdays = null, SeasonFrom = "05-01", SeasonUntil = "09-30" }, "/seasonFrom", "not_weekly"));

    [Fact]
    public void Holidays_are_dates() => Spec.EachIsRefused(
        (new SetHolidays(Dock.At(Time, "h"), null), "/dates", "missing"),
        (new SetHolidays(Dock.At(Time, "h"), ["2026-12-25", "Boxing Day"]), "/dates/1", "not_a_date"),
        (new SetHolidays(Dock.At(Time, "h"), [.. Enumerable.Range(0, 401).Select(n => Periods.Day(new DateOnly(2026, 1, 1).AddDays(n)))]), "/dates", "too_many"));

    [Fact]
    public void Quiet_hours_begin_and_end() => Spec.EachIsRefused(
        (Alerts with { GatherMinutes = null }, "/gatherMinutes", "missing"),
        (Alerts with { GatherMinutes = 1441 }, "/gatherMinutes", "out_of_range"),
        (Alerts with { QuietFrom = null }, "/quietFrom", "missing"),
        (Alerts with { QuietUntil = "22:00" }, "/quietUntil", "no_hours"),
        (Alerts with { QuietUntil = "half six" }, "/quietUntil", "not_a_time"),
        (Alerts with { ExitWithinHours = 0 }, "/exitWithinHours", "out_of_range"));

    [Fact]
    public void A_docks_own_schedule_holds_for_it_and_one_of_all_docks_for_the_others()
    {
        var office = Log(
            new DockOpened(Received("2026-01-01", 1), "jetty", "The Jetty", "Europe/Oslo", null, null),
            new ScheduleSet(Received("2026-01-02", 2), ScheduledDigest.WeeklyWear, DayOfWeek.Friday, new TimeOnly(15, 0)),
            new DigestTimed(Received("2026-01-03", 3), ScheduledDigest.WeeklyWear, "jetty", DigestRhythm.Daily, null, null, new TimeOnly(6, 0), null, null, HolidayRule.Send, null, null, null, null),
            new DigestTimed(Received("2026-01-04", 4), ScheduledDigest.WeeklyWear, null, DigestRhythm.Weekly, [DayOfWeek.Tuesday], null, new TimeOnly(8, 0), null, null, HolidayRule.Send, null, null, null, null));
        var book = ScheduleBook.Of(office);
        var zone = TimeZoneInfo.FindSystemTimeZoneById(Dock.Zone);
        Assert.Equal(DigestRhythm.Daily, book.Of(ScheduledDigest.WeeklyWear, "jetty", zone).Present.Rhythm);
        Assert.Equal("Europe/Oslo", book.Of(ScheduledDigest.WeeklyWear, "jetty", zone).Zone.Id); // of each dock's own zone
        Assert.Equal([DayOfWeek.Tuesday], book.Of(ScheduledDigest.WeeklyWear, "bay", zone).Present.Weekdays);
        Assert.Equal([DayOfWeek.Tuesday], book.Of(ScheduledDigest.WeeklyWear, null, zone).Present.Weekdays);
        Assert.Equal(Dock.Zone, book.Of(ScheduledDigest.WeeklyWear, null, zone).Zone.Id);
        Assert.True(book.Of(ScheduledDigest.DueList, "jetty", zone).Present.IsUsual);
        Assert.Equal(AlertRule.Usual, book.Alerts);
    }

    [Fact]
    public void Quiet_hours_go_over_midnight_and_end_when_they_say()
    {
        var rule = AlertRule.Usual with { QuietFrom = new(21, 0), QuietUntil = new(6, 30) };
        Assert.Equal([true, true, true, false, false], new[] { new TimeOnly(21, 0), new(0, 0), new(6, 29), new(6, 30), new(20, 59) }.Select(rule.IsQuiet));
        Assert.False((rule with { QuietFrom = null, QuietUntil = null }).IsQuiet(new(3, 0)));
    }

    private static FactLog Log(params IFact[] facts) => facts.Aggregate(FactLog.Empty(StreamName.Operator), (log, fact) => log.Evolve(fact));

    private static Entry Received(string day, int n)
    {
        var noon = DateTimeOffset.Parse($"{day}T12:00:00Z", CultureInfo.InvariantCulture);
        return new Entry(new Guid(n, 0, 0, new byte[8]), "office", "office", 0, noon, "UTC", noon, noon, 0, null);
    }

    private static void Kept<T>(T command, IFact fact)
        where T : ICommand<T> =>
        Spec.Given().When(command).Then(("operator", fact)).Naming();
}
