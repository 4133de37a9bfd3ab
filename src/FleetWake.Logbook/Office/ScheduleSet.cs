using System.Globalization;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Office;

/// <summary>The operator set when a digest goes out, by the clock of its office.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Weekday">On which day of the week.</param>
/// <param name="LocalTime">At what time of that day.</param>
[StoredAs("schedule_set", 1)]
public sealed record ScheduleSet(Entry Entry, ScheduledDigest Digest, DayOfWeek Weekday, TimeOnly LocalTime) : IFact;

/// <summary>Digests that go out by a schedule.</summary>
public enum ScheduledDigest
{
    /// <summary>The weekly mail on wear.</summary>
    WeeklyWear,

    /// <summary>A dock's list of what is due.</summary>
    DueList,

    /// <summary>What cannot wait. It goes out when there is something to tell.</summary>
    Alert,

    /// <summary>The month's records and figures for an analyst.</summary>
    AnalystPack,
}

/// <summary>Sets when a digest goes out.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Weekday">On which day of the week.</param>
/// <param name="LocalTime">At what time of that day, hours and minutes, e.g. <c>06:30</c>.</param>
public sealed record SetSchedule(
    Stamp? Entry,
    [property: OneOf(typeof(ScheduledDigest))] string? Digest,
    [property: OneOf(typeof(DayOfWeek))] string? Weekday,
    string? LocalTime) : ICommand<SetSchedule>
{
    /// <inheritdoc/>
    public static string Kind => "schedule_set";

    /// <inheritdoc/>
    public static SetSchedule Example => new(Examples.At(245, "2026-05-01T07:15:00"), "weekly_wear", "monday", "06:30");

    /// <inheritdoc/>
    public static string Summary => "Sets on which weekday and at what time a digest goes out.";

    /// <inheritdoc/>
    public static Decision Decide(SetSchedule command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var digest = check.OneOf<ScheduledDigest>(command.Digest, "/digest");
        var weekday = check.OneOf<DayOfWeek>(command.Weekday, "/weekday");
        if (command.LocalTime is null) check.Refuse("/localTime", "missing", "missing: give hours and minutes as in 06:30");
        var time = TimeOnly.MinValue;
        if (command.LocalTime is { } text && !TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out time))
            check.Refuse("/localTime", "not_a_time", "give hours and minutes as in 06:30");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new ScheduleSet(entry!, digest, weekday, time))], []));
    }
}
