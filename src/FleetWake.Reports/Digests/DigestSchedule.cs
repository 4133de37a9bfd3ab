using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;

namespace FleetWake.Reports.Digests;

/// <summary>When the weekly digest goes out, by the clock of the operator's office.</summary>
/// <param name="Day">On which day of the ISO week.</param>
/// <param name="Time">At what time of that day.</param>
public sealed record DigestSchedule(DayOfWeek Day, TimeOnly Time)
{
    /// <summary>Monday 06:00, for an operator that has set nothing.</summary>
    public static DigestSchedule Usual { get; } = new(DayOfWeek.Monday, new TimeOnly(6, 0));

    /// <summary>What the operator set last.</summary>
    public static DigestSchedule Of(FactLog office) =>
        Effective.Of(office.Facts).Facts.OfType<ScheduleSet>().LastOrDefault(s => s.Digest == ScheduledDigest.WeeklyWear) is { } set
            ? new DigestSchedule(set.Weekday, set.LocalTime)
            : Usual;

    /// <summary>The day on which it goes out in the week of a Monday.</summary>
    public DateOnly DayIn(DateOnly monday) => monday.AddDays(((int)Day + 6) % 7);
}
