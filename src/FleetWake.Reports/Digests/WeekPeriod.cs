using System.Globalization;

namespace FleetWake.Reports.Digests;

/// <summary>ISO 8601 weeks, the period of the weekly digest.</summary>
public static class WeekPeriod
{
    /// <summary>Hour of Monday, by the operator's clock, from which the week's digest is due.</summary>
    public const int DueHour = 6;

    /// <summary>The week that a day lies in, e.g. <c>2026-W47</c>.</summary>
    public static string Of(DateOnly day)
    {
        var date = day.ToDateTime(TimeOnly.MinValue);
        return $"{ISOWeek.GetYear(date):0000}-W{ISOWeek.GetWeekOfYear(date):00}";
    }

    /// <summary>The newest period whose digest is due at a local time.</summary>
    public static string DueAt(DateTime local)
    {
        var day = DateOnly.FromDateTime(local);
        var early = local.DayOfWeek == DayOfWeek.Monday && local.Hour < DueHour;
        return Of(early ? day.AddDays(-1) : day);
    }
}
