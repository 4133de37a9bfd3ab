using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Rules;

/// <summary>A schedule in words.</summary>
internal static class ScheduleWords
{
    private static PageTexts T => PageTexts.English;

    /// <summary>Digests that go out by a schedule.</summary>
    public static IEnumerable<ScheduledDigest> Digests => Enum.GetValues<ScheduledDigest>().Where(d => d != ScheduledDigest.Alert);

    /// <summary>Days of the week, Monday first.</summary>
    public static IEnumerable<DayOfWeek> Week => Enumerable.Range(1, 7).Select(d => (DayOfWeek)(d % 7));

    /// <summary>Days and time, with what else is set.</summary>
    /// <param name="line">When it goes out.</param>
    public static string Of(ScheduleLine line)
    {
        var schedule = line.Present;
        if (schedule.Off) return T["rules.goes-not"];
        var time = schedule.At.ToString("HH:mm", CultureInfo.InvariantCulture);
        var days = schedule.Rhythm switch
        {
            DigestRhythm.Daily => T["rules.every-day"],
            DigestRhythm.Monthly => T.With("rules.month-day", ("n", schedule.MonthDay)),
            DigestRhythm.Cron => schedule.Cron is { } cron ? T.With("rules.by-line", ("line", cron.Line)) : T["rules.goes-not"],
            _ => string.Join(", ", Week.Where(schedule.Weekdays.Contains).Select(d => T["rules.day-" + Words.Of(d)])),
        };
        string?[] more =
        [
            schedule.Season is { } season ? T.With("rules.in-season", ("from", season.From), ("until", season.Until)) : null,
            schedule.Holidays == HolidayRule.NextDay ? null : T["rules.holiday-" + Words.Of(schedule.Holidays)],
            schedule.Missed is { } missed ? T["rules.missed-" + Words.Of(missed)] : null,
        ];
        return string.Join("; ", [T.With("rules.goes-out", ("day", days), ("time", time), ("zone", line.ZoneOf(schedule).Id)), .. more.OfType<string>()]);
    }

    /// <summary>The next times it goes out, by its own clock.</summary>
    public static IEnumerable<string> Next(ScheduleLine line, DateTimeOffset now, int most) =>
        line.Next(now, most).Select(o => TimeZoneInfo.ConvertTime(o.At, line.ZoneOf(line.Present)).ToString("ddd yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture));
}
