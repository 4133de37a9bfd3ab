using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Schedules;

/// <summary>When a digest goes out.</summary>
public sealed record DigestSchedule
{
    /// <summary>Which digest.</summary>
    public required ScheduledDigest Digest { get; init; }

    /// <summary>The dock whose readers it is for; null for every dock that has none of its own, and for readers of the whole fleet.</summary>
    public string? Dock { get; init; }

    /// <summary>How it recurs.</summary>
    public DigestRhythm Rhythm { get; init; } = DigestRhythm.Weekly;

    /// <summary>On which days of the week; with one alone its period is the week.</summary>
    public IReadOnlyList<DayOfWeek> Weekdays { get; init; } = [DayOfWeek.Monday];

    /// <summary>On which day of the month, from 1; the last one in a shorter month.</summary>
    public int MonthDay { get; init; } = 1;

    /// <summary>At what time of that day.</summary>
    public TimeOnly Time { get; init; } = new(7, 0);

    /// <summary>Days and time by an expert's line; null unless the rhythm is that.</summary>
    public CronDays? Cron { get; init; }

    /// <summary>IANA zone of its clock; that of the dock, else of the office, when null.</summary>
    public string? Zone { get; init; }

    /// <summary>What becomes of it on a day of the operator's own calendar of holidays.</summary>
    public HolidayRule Holidays { get; init; } = HolidayRule.NextDay;

    /// <summary>In which part of the year it is weekly, and monthly in the rest; the same all year when null.</summary>
    public SeasonDays? Season { get; init; }

    /// <summary>What becomes of those that were missed; as the program is set when null.</summary>
    public MissedRule? Missed { get; init; }

    /// <summary>It does not go out.</summary>
    public bool Off { get; init; }

    /// <summary>Nobody set it.</summary>
    public bool IsUsual { get; init; }

    /// <summary>As long as nobody sets anything: Monday 07:00; the analyst's pack on the first of the month.</summary>
    public static DigestSchedule Usual(ScheduledDigest digest) => new() { Digest = digest, IsUsual = true, Rhythm = digest == ScheduledDigest.AnalystPack ? DigestRhythm.Monthly : DigestRhythm.Weekly };

    /// <summary>The time of day at which it goes out.</summary>
    public TimeOnly At => Cron?.Time ?? Time;
}

/// <summary>How a digest recurs.</summary>
public enum DigestRhythm
{
    /// <summary>On some days of the week.</summary>
    Weekly,

    /// <summary>Every day.</summary>
    Daily,

    /// <summary>On a day of the month.</summary>
    Monthly,

    /// <summary>By an expert's line.</summary>
    Cron,
}

/// <summary>What becomes of a digest that falls on a holiday.</summary>
public enum HolidayRule
{
    /// <summary>It goes out on the next day that is none; where another one of the same digest comes by then, that one stands for both.</summary>
    NextDay,

    /// <summary>It is skipped.</summary>
    Skip,

    /// <summary>It goes out all the same.</summary>
    Send,
}

/// <summary>What becomes of digests whose time passed while nothing ran.</summary>
public enum MissedRule
{
    /// <summary>The newest one is issued; the record says that the earlier ones were passed over.</summary>
    Latest,

    /// <summary>Each is issued, oldest first, as of the day on which it was due.</summary>
    All,
}

/// <summary>A part of the year, over its turn where it ends before it begins.</summary>
/// <param name="From">First day, as <c>MM-dd</c>.</param>
/// <param name="Until">Last day, as <c>MM-dd</c>.</param>
public sealed record SeasonDays(string From, string Until)
{
    /// <summary>Whether a day lies in it.</summary>
    public bool Holds(DateOnly day)
    {
        var at = day.ToString("MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        var (after, before) = (string.CompareOrdinal(at, From) >= 0, string.CompareOrdinal(at, Until) <= 0);
        return string.CompareOrdinal(From, Until) <= 0 ? after && before : after || before;
    }
}
