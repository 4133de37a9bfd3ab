namespace FleetWake.Demo;

/// <summary>The days of the demo, in the docks' zone. The zone lends its clock changes; the docks lie nowhere.</summary>
internal sealed class DockCalendar(DateOnly today)
{
    /// <summary>A zone with two clock changes a year and its summer around New Year.</summary>
    public const string ZoneName = "Pacific/Auckland";

    private static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById(ZoneName);

    /// <summary>The day of the showing.</summary>
    public DateOnly Today { get; } = today;

    /// <summary>The first day of the record.</summary>
    public DateOnly Start { get; } = today.AddYears(-2);

    /// <summary>The evening before the showing: the last moment that anything may have happened.</summary>
    public DateTimeOffset LastEvening => At(DaysAgo(1), 19, 0);

    /// <summary>The day this many days before the showing.</summary>
    public DateOnly DaysAgo(int days) => Today.AddDays(-days);

    /// <summary>A local time with the offset of that day. By day no clock is ever changed.</summary>
    public static DateTimeOffset At(DateOnly day, int hour, int minute) => Local(day.ToDateTime(new TimeOnly(hour, minute)));

    /// <summary>A local time with its offset.</summary>
    public static DateTimeOffset Local(DateTime local) => new(local, Zone.GetUtcOffset(local));

    /// <summary>A moment some time later, by the dock's clock.</summary>
    public static DateTimeOffset Later(DateTimeOffset from, TimeSpan by) => TimeZoneInfo.ConvertTime(from + by, Zone);

    /// <summary>The last day, three weeks ago or earlier, on which the clocks were put forward (spring) or back (autumn).</summary>
    public DateOnly ClocksChanged(bool forward)
    {
        for (var day = DaysAgo(21); ; day = day.AddDays(-1))
        {
            var by = At(day, 12, 0).Offset - At(day.AddDays(-1), 12, 0).Offset;
            if (forward ? by > TimeSpan.Zero : by < TimeSpan.Zero) return day;
        }
    }

    /// <summary>A time as a stamp has it.</summary>
    public static string Text(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz");
}
