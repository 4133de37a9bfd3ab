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
        if (schedule.Off || PeriodOf(schedule, planned) is not { } period || Sent(schedule, planned, holidays) is not { } day) return null;
        return new Occasion(period, day, LocalMoment.Of(day, schedule.At, zone));
    }

    /// <summary>The period of the one that is planned for a day; null when none is.</summary>
    private static string? PeriodOf(DigestSchedule schedule, DateOnly day)
    {
        switch (schedule.Rhythm)
        {
            case DigestRhythm.Daily:
                return Periods.Day(day);
            case DigestRhythm.Cron:
                return schedule.Cron?.Holds(day) == true ? Periods.Day(day) : null;
            case DigestRhythm.Monthly:
                // The month that has ended, where that is what it tells of.
                return day.Day == Math.Min(schedule.MonthDay, DateTime.DaysInMonth(day.Year, day.Month))
                    ? Periods.Month(schedule.Digest == ScheduledDigest.AnalystPack ? day.AddMonths(-1) : day)
                    : null;
            default:
                if (!schedule.Weekdays.Contains(day.DayOfWeek)) return null;
                if (schedule.Season is { } season && !season.Holds(day))
                {
                    // The first of its days in a month stands for the month.
                    return day.Day <= 7 && !Enumerable.Range(1, day.Day - 1).Any(d => schedule.Weekdays.Contains(new DateOnly(day.Year, day.Month, d).DayOfWeek)) ? Periods.Month(day) : null;
                }

                return schedule.Weekdays.Count == 1 ? Periods.Week(day) : Periods.Day(day);
        }
    }

    /// <summary>
    /// The day on which the one that is planned for a day goes out: on a holiday the next day that is none. Where another one is planned by
    /// then, that one goes out for both: nobody wants two in a morning, nor yesterday's list beside today's.
    /// </summary>
    private static DateOnly? Sent(DigestSchedule schedule, DateOnly planned, IReadOnlySet<DateOnly> holidays)
    {
        if (schedule.Holidays == HolidayRule.Send || !holidays.Contains(planned)) return planned;
        if (schedule.Holidays == HolidayRule.Skip) return null;
        for (var day = planned.AddDays(1); PeriodOf(schedule, day) is null; day = day.AddDays(1))
            if (!holidays.Contains(day)) return day;
        return null;
    }
}
