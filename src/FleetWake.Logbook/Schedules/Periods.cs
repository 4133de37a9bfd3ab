using System.Globalization;

namespace FleetWake.Logbook.Schedules;

/// <summary>
/// Periods as they stand in ledgers: an ISO 8601 week (<c>2026-W47</c>), a day (<c>2026-11-30</c>) or a month (<c>2026-11</c>).
/// Of one kind, their order as text is their order in time.
/// </summary>
public static class Periods
{
    /// <summary>The ISO week that a day lies in.</summary>
    public static string Week(DateOnly day)
    {
        var date = day.ToDateTime(TimeOnly.MinValue);
        return string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(date):0000}-W{ISOWeek.GetWeekOfYear(date):00}");
    }

    /// <summary>A day.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The month that a day lies in.</summary>
    public static string Month(DateOnly day) => day.ToString("yyyy-MM", CultureInfo.InvariantCulture);

    /// <summary>The Monday of a week.</summary>
    public static DateOnly Monday(string week) => FirstDay(week) is { } monday && week.Contains('W', StringComparison.Ordinal) ? monday : throw new FormatException($"\"{week}\" is no week.");

    /// <summary>The first day of any period; null for a text that is none.</summary>
    public static DateOnly? FirstDay(string period)
    {
        if (period.Length == 8 && period[4..6] == "-W"
            && int.TryParse(period[..4], NumberStyles.None, CultureInfo.InvariantCulture, out var year) && int.TryParse(period[6..], NumberStyles.None, CultureInfo.InvariantCulture, out var week)
            && year is > 1900 and < 9998 && week >= 1 && week <= ISOWeek.GetWeeksInYear(year))
            return DateOnly.FromDateTime(ISOWeek.ToDateTime(year, week, DayOfWeek.Monday));
        if (DateOnly.TryParseExact(period, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return day;
        return DateOnly.TryParseExact(period + "-01", "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var month) ? month : null;
    }

    /// <summary>A period for people: "week 47", "30 November 2026" or "November 2026".</summary>
    public static string Prose(string period) => (period.Length, FirstDay(period)) switch
    {
        (_, null) => period,
        (8, _) => $"week {period[6..].TrimStart('0')}",
        (10, { } day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture),
        (_, { } month) => month.ToString("MMMM yyyy", CultureInfo.InvariantCulture),
    };
}
