using System.Globalization;

namespace FleetWake.Reports.Digests;

/// <summary>ISO 8601 weeks, the period of the weekly digest. Their order as text is their order in time.</summary>
public static class WeekPeriod
{
    /// <summary>The week that a day lies in, e.g. <c>2026-W47</c>.</summary>
    public static string Of(DateOnly day)
    {
        var date = day.ToDateTime(TimeOnly.MinValue);
        return $"{ISOWeek.GetYear(date):0000}-W{ISOWeek.GetWeekOfYear(date):00}";
    }

    /// <summary>The Monday of a week.</summary>
    public static DateOnly Monday(string period) => DateOnly.FromDateTime(ISOWeek.ToDateTime(
        int.Parse(period[..4], CultureInfo.InvariantCulture), int.Parse(period[6..], CultureInfo.InvariantCulture), DayOfWeek.Monday));

    /// <summary>The moment at which a week's digest is due.</summary>
    public static DateTimeOffset DueMoment(string period, TimeZoneInfo zone, DigestSchedule schedule) =>
        Instant(schedule.DayIn(Monday(period)).ToDateTime(schedule.Time), zone);

    /// <summary>The newest week whose digest is due. It never goes back while time goes on, whatever the clocks of the zone do.</summary>
    public static string DueAt(DateTimeOffset now, TimeZoneInfo zone, DigestSchedule schedule)
    {
        var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);

        // Next week's is asked as well: where clocks jump over midnight, its moment may come a little before its day.
        for (var candidate = day.AddDays(7); ; candidate = candidate.AddDays(-7))
        {
            var period = Of(candidate);
            if (DueMoment(period, zone, schedule) <= now) return period;
        }
    }

    /// <summary>The weeks after one and before another, oldest first.</summary>
    public static IEnumerable<string> Between(string after, string before)
    {
        for (var monday = Monday(after).AddDays(7); monday < Monday(before); monday = monday.AddDays(7)) yield return Of(monday);
    }

    /// <summary>
    /// The instant of a local time. One that the clocks jump over is taken as if they had not jumped yet, and so falls just
    /// after the gap; of one that comes twice, the first counts.
    /// </summary>
    private static DateTimeOffset Instant(DateTime local, TimeZoneInfo zone)
    {
        if (zone.IsAmbiguousTime(local)) return new DateTimeOffset(local, zone.GetAmbiguousTimeOffsets(local).Max());
        var before = local;
        while (zone.IsInvalidTime(before)) before = before.AddMinutes(-15);
        return new DateTimeOffset(local, zone.GetUtcOffset(before));
    }
}
