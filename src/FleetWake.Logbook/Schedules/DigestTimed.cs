using System.Globalization;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Schedules;

/// <summary>The operator set when a digest goes out, in full; it replaces what was set before for the same digest and dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Dock">The dock whose readers it is for; null for every dock that has none of its own, and for readers of the whole fleet.</param>
/// <param name="Rhythm">How it recurs.</param>
/// <param name="Weekdays">On which days of the week; null unless weekly.</param>
/// <param name="MonthDay">On which day of the month; null unless monthly.</param>
/// <param name="LocalTime">At what time of that day; null with an expert's line, which holds it.</param>
/// <param name="Cron">An expert's line; null without one.</param>
/// <param name="Zone">IANA zone of its clock; null for that of the dock, else of the office.</param>
/// <param name="Holidays">What becomes of it on a holiday.</param>
/// <param name="SeasonFrom">First day of the season in which it is weekly, as <c>MM-dd</c>; null when it is the same all year.</param>
/// <param name="SeasonUntil">Last day of that season.</param>
/// <param name="Missed">What becomes of those that were missed; null as the program is set.</param>
/// <param name="Off">It does not go out; null for false.</param>
[StoredAs("digest_timed", 1)]
public sealed record DigestTimed(
    Entry Entry,
    ScheduledDigest Digest,
    string? Dock,
    DigestRhythm Rhythm,
    IReadOnlyList<DayOfWeek>? Weekdays,
    int? MonthDay,
    TimeOnly? LocalTime,
    string? Cron,
    string? Zone,
    HolidayRule Holidays,
    string? SeasonFrom,
    string? SeasonUntil,
    MissedRule? Missed,
    bool? Off) : IFact;

/// <summary>Sets when a digest goes out, in full.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Rhythm">How it recurs.</param>
/// <param name="Weekdays">On which days of the week; needed when weekly. With one alone its period is the week.</param>
/// <param name="MonthDay">On which day of the month, 1 to 31; needed when monthly. In a shorter month, its last day.</param>
/// <param name="LocalTime">At what time of that day, e.g. <c>07:00</c>; needed unless by an expert's line.</param>
/// <param name="Cron">An expert's line, as Quartz writes it, with one time of day; needed when the rhythm is cron.</param>
/// <param name="Dock">The dock whose readers it is for; left out for every dock that has none of its own, and for readers of the whole fleet.</param>
/// <param name="Zone">IANA zone of its clock; left out for that of the dock, else of the office.</param>
/// <param name="Holidays">What becomes of it on a day of the operator's list of holidays; next_day when left out.</param>
/// <param name="SeasonFrom">First day of the season in which it is weekly, month and day as in <c>05-01</c>; outside it is monthly. Left out, it is weekly all year.</param>
/// <param name="SeasonUntil">Last day of that season.</param>
/// <param name="Missed">What becomes of those that were missed while nothing ran; as the program is set when left out.</param>
/// <param name="Off">It does not go out.</param>
public sealed partial record TimeDigest(
    Stamp? Entry,
    [property: OneOf(typeof(ScheduledDigest))] string? Digest,
    [property: OneOf(typeof(DigestRhythm))] string? Rhythm,
    [property: OneOf(typeof(DayOfWeek))] IReadOnlyList<string>? Weekdays = null,
    int? MonthDay = null,
    string? LocalTime = null,
    string? Cron = null,
    string? Dock = null,
    string? Zone = null,
    [property: OneOf(typeof(HolidayRule))] string? Holidays = null,
    string? SeasonFrom = null,
    string? SeasonUntil = null,
    [property: OneOf(typeof(MissedRule))] string? Missed = null,
    bool? Off = null) : ICommand<TimeDigest>
{
    /// <inheritdoc/>
    public static string Kind => "digest_timed";

    /// <inheritdoc/>
    public static TimeDigest Example =>
        new(Examples.At(311, "2026-05-01T07:25:00"), "weekly_wear", "weekly", ["monday"], LocalTime: "07:00", Dock: "north-pier", Holidays: "next_day", SeasonFrom: "05-01", SeasonUntil: "09-30", Missed: "latest");

    /// <inheritdoc/>
    public static string Summary => "Sets when a digest goes out: for one dock or all, by days and time, with holidays, season and what was missed.";

    /// <inheritdoc/>
    public static Decision Decide(TimeDigest command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var digest = check.OneOf<ScheduledDigest>(command.Digest, "/digest");
        var rhythm = check.OneOf<DigestRhythm>(command.Rhythm, "/rhythm");
        var known = command.Rhythm is { } word && Words.TryRead<DigestRhythm>(word, out _);
        if (command.Digest == Words.Of(ScheduledDigest.Alert)) check.Refuse("/digest", "not_by_schedule", "alerts go out when there is something to tell: set quiet hours and grouping by alerts_set");
        if (command.Digest == Words.Of(ScheduledDigest.AnalystPack) && known && rhythm != DigestRhythm.Monthly) check.Refuse("/rhythm", "monthly_alone", "the analyst's pack is of a month that has ended: let it go out monthly");
        var weekdays = Days(command, check, known && rhythm == DigestRhythm.Weekly);
        var monthDay = known && rhythm == DigestRhythm.Monthly ? check.Whole(command.MonthDay, "/monthDay", 1, 31, "day") : Stray<int?>(command.MonthDay, "/monthDay", "monthly");
        var time = known && rhythm != DigestRhythm.Cron ? Time(command.LocalTime, check) : Stray<TimeOnly?>(command.LocalTime is null ? null : TimeOnly.MinValue, "/localTime", "the others; an expert's line holds the time");
        var cron = Line(command, check, known && rhythm == DigestRhythm.Cron, arrival);
        var dock = check.MaybeId(command.Dock, "/dock");
        var zone = command.Zone is null ? null : check.Zone(command.Zone, "/zone");
        var holidays = check.MaybeOneOf<HolidayRule>(command.Holidays, "/holidays") ?? HolidayRule.NextDay;
        if (command.SeasonFrom is null != command.SeasonUntil is null) check.Refuse(command.SeasonFrom is null ? "/seasonFrom" : "/seasonUntil", "missing", "missing: give the first and the last day of the season, or neither");
        else if (command.SeasonFrom is not null && known && rhythm is not DigestRhythm.Weekly) check.Refuse("/seasonFrom", "not_weekly", "a season stands with weekly alone");
        MonthAndDay(command.SeasonFrom, "/seasonFrom", check);
        MonthAndDay(command.SeasonUntil, "/seasonUntil", check);
        var missed = check.MaybeOneOf<MissedRule>(command.Missed, "/missed");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Operator, new DigestTimed(entry!, digest, dock, rhythm, weekdays, monthDay, time, cron, zone?.Id, holidays, command.SeasonFrom, command.SeasonUntil, missed, command.Off is true ? true : null))], []));

        T? Stray<T>(T? value, string field, string with)
        {
            if (known && value is not null) check.Refuse(field, "not_with_this_rhythm", $"stands with {with} alone: leave it out");
            return default;
        }
    }

    private static IReadOnlyList<DayOfWeek>? Days(TimeDigest command, Check check, bool wanted)
    {
        if (!wanted) return null;
        var words = check.List(command.Weekdays, "/weekdays", 1, 7);
        check.Once(words, "/weekdays", "each day once");
        return [.. words.Select((w, n) => check.OneOf<DayOfWeek>(w, $"/weekdays/{n}")).Order()];
    }

    private static TimeOnly? Time(string? text, Check check)
    {
        if (text is null) check.Refuse("/localTime", "missing", "missing: give hours and minutes as in 07:00");
        else if (TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) return time;
        else check.Refuse("/localTime", "not_a_time", "give hours and minutes as in 07:00");
        return null;
    }

    private static string? Line(TimeDigest command, Check check, bool wanted, Arrival arrival)
    {
        if (!wanted)
        {
            if (command is { Cron: not null, Rhythm: not null }) check.Refuse("/cron", "not_with_this_rhythm", "stands with the rhythm cron alone: leave it out");
            return null;
        }

        if (command.Cron is null) check.Refuse("/cron", "missing", "missing: give the line, e.g. 0 30 6 ? * MON-FRI");
        else if (CronDays.Read(command.Cron, out var why) is not { } days) check.Refuse("/cron", "not_a_cron_line", why!);
        else if (days.FirstFrom(DateOnly.FromDateTime(arrival.ReceivedAt.UtcDateTime).AddDays(-1)) is null)
            check.Refuse("/cron", "never", $"names no day within {CronDays.FarthestYears} years from now, so nothing would ever go out: look at day, month and year of the line; 0 30 6 ? * MON-FRI goes out from Monday to Friday");
        else return days.Line;
        return null;
    }

    private static void MonthAndDay(string? text, string field, Check check)
    {
        // The year is a leap year, for the 29th of February begins or ends a season as well as another day.
        if (text is not null && !(Shape().IsMatch(text) && DateOnly.TryParseExact($"2028-{text}", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)))
            check.Refuse(field, "not_a_day", "give month and day as in 05-01");
    }

    [GeneratedRegex(@"\A[0-9]{2}-[0-9]{2}\z")]
    private static partial Regex Shape();
}
