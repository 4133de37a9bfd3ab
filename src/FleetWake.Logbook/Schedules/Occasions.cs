using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Schedules;

/// <summary>One time that a digest goes out.</summary>
/// <param name="Period">The period that it is of; one digest has each once.</param>
/// <param name="Day">The day by its clock.</param>
/// <param name="At">The moment from which it is due.</param>
public sealed record Occasion(string Period, DateOnly Day, DateTimeOffset At);

/// <summary>The times at which a schedule sends. Pure: holidays, zone and days are passed in.</summary>
public static class Occasions
{
    /// <summary>How far a holiday may push a digest [days]: not as far as its next one.</summary>
    private const int FarthestPush = 6;

    /// <summary>Those that are planned for the days from one to another, in the order of their days.</summary>
    /// <param name="schedule">The schedule; nothing comes of one that is off.</param>
    /// <param name="zone">Its clock.</param>
    /// <param name="from">First day for which one may be planned.</param>
    /// <param name="to">Last such day.</param>
    /// <param name="holidays">The operator's holidays.</param>
    public static IEnumerable<Occasion> Planned(DigestSchedule schedule, TimeZoneInfo zone, DateOnly from, DateOnly to, IReadOnlySet<DateOnly> holidays)
    {
        for (var day = from; day <= to; day = day.AddDays(1))
            if (Of(schedule, zone, day, holidays) is { } occasion)
                yield return occasion;
    }

    /// <summary>The one that is planned for a day; null when none is.</summary>
    public static Occasion? Of(DigestSchedule schedule, TimeZoneInfo zone, DateOnly planned, IReadOnlySet<DateOnly> holidays)
    {
        if (schedule.Off || !IsPlanned(schedule, planned, out var period)) return null;
        if (Sent(schedule, planned, holidays) is not { } day) return null;
        return new Occasion(period, day, LocalMoment.Of(day, schedule.At, zone));
    }

    private static bool IsPlanned(DigestSchedule schedule, DateOnly day, out string period)
    {
        period = Periods.Day(day);
        switch (schedule.Rhythm)
        {
            case DigestRhythm.Daily:
                return true;
            case DigestRhythm.Cron:
                return schedule.Cron?.Holds(day) == true;
            case DigestRhythm.Monthly:
                // The month that has ended, where that is what it tells of.
                period = Periods.Month(schedule.Digest == ScheduledDigest.AnalystPack ? day.AddMonths(-1) : day);
                return day.Day == Math.Min(schedule.MonthDay, DateTime.DaysInMonth(day.Year, day.Month));
            default:
                if (!schedule.Weekdays.Contains(day.DayOfWeek)) return false;
                if (schedule.Season is { } season && !season.Holds(day))
                {
                    // The first of its days in a month stands for the month.
                    period = Periods.Month(day);
                    return day.Day <= 7 && !Enumerable.Range(1, day.Day - 1).Any(d => schedule.Weekdays.Contains(new DateOnly(day.Year, day.Month, d).DayOfWeek));
                }

                if (schedule.Weekdays.Count == 1) period = Periods.Week(day);
                return true;
        }
    }

    private static DateOnly? Sent(DigestSchedule schedule, DateOnly planned, IReadOnlySet<DateOnly> holidays)
    {
        if (schedule.Holidays == HolidayRule.Send || !holidays.Contains(planned)) return planned;
        var often = schedule.Rhythm is DigestRhythm.Daily or DigestRhythm.Cron || (schedule.Rhythm == DigestRhythm.Weekly && schedule.Weekdays.Count > 1);
        if (schedule.Holidays == HolidayRule.Skip || often) return null;
        for (var push = 1; push <= FarthestPush; push++)
            if (!holidays.Contains(planned.AddDays(push))) return planned.AddDays(push);
        return planned; // A week of holidays and none to push it to: late news is worse.
    }
}
