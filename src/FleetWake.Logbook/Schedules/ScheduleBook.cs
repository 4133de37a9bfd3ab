using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Schedules;

/// <summary>All that an operator's own log tells of when digests go out.</summary>
public sealed class ScheduleBook
{
    private readonly List<(DateTimeOffset From, DigestSchedule Schedule)> told;
    private readonly IReadOnlyDictionary<string, string> docks;

    private ScheduleBook(List<(DateTimeOffset, DigestSchedule)> told, IReadOnlyDictionary<string, string> docks, IReadOnlySet<DateOnly> holidays, AlertRule alerts) =>
        (this.told, this.docks, Holidays, Alerts) = (told, docks, holidays, alerts);

    /// <summary>The operator's holidays.</summary>
    public IReadOnlySet<DateOnly> Holidays { get; }

    /// <summary>How alerts are told.</summary>
    public AlertRule Alerts { get; }

    /// <summary>Reads it out of the log of the operator's stream.</summary>
    public static ScheduleBook Of(FactLog office)
    {
        var facts = Effective.Of(office.Facts).Facts;
        var alerts = facts.OfType<AlertsSet>().LastOrDefault();
        return new ScheduleBook(
            [.. facts.Select(f => (f.Entry.ReceivedAt, Schedule: Read(f))).Where(s => s.Schedule is not null).Select(s => (s.ReceivedAt, s.Schedule!)).OrderBy(s => s.ReceivedAt)],
            facts.OfType<DockOpened>().GroupBy(d => d.Dock, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Zone, StringComparer.Ordinal),
            facts.OfType<HolidaysSet>().LastOrDefault()?.Dates.ToHashSet() ?? [],
            alerts is null ? AlertRule.Usual : new AlertRule(alerts.QuietFrom, alerts.QuietUntil, TimeSpan.FromMinutes(alerts.GatherMinutes), alerts.ExitWithinHours, alerts.Off is true));
    }

    /// <summary>What was set last, for whichever digests and docks something was.</summary>
    public IReadOnlyList<DigestSchedule> Set =>
        [.. told.Select(t => t.Schedule).GroupBy(s => (s.Digest, s.Dock)).Select(g => g.Last()).OrderBy(s => s.Digest).ThenBy(s => s.Dock, StringComparer.Ordinal)];

    /// <summary>When a digest goes out to the readers of a dock, or of the whole fleet.</summary>
    /// <param name="digest">The digest.</param>
    /// <param name="dock">The dock; null for the whole fleet.</param>
    /// <param name="zone">Zone of the office, where the dock has none on record.</param>
    public ScheduleLine Of(ScheduledDigest digest, string? dock, TimeZoneInfo zone)
    {
        // A schedule of all docks counts for one from whose own there is none yet, and never after it.
        var spans = new List<(DateTimeOffset From, DigestSchedule Schedule)> { (DateTimeOffset.MinValue, DigestSchedule.Usual(digest)) };
        var own = false;
        foreach (var (from, schedule) in told.Where(t => t.Schedule.Digest == digest && (t.Schedule.Dock is null || t.Schedule.Dock == dock)))
        {
            if (schedule.Dock is null && own) continue;
            own |= schedule.Dock is not null;
            if (spans[^1].From == from) spans[^1] = (from, schedule);
            else spans.Add((from, schedule));
        }

        return new ScheduleLine(spans, dock is not null && docks.TryGetValue(dock, out var there) && TimeZoneInfo.TryFindSystemTimeZoneById(there, out var found) ? found : zone, Holidays);
    }

    private static DigestSchedule? Read(IFact fact) => fact switch
    {
        ScheduleSet set => new DigestSchedule { Digest = set.Digest, Weekdays = [set.Weekday], Time = set.LocalTime },
        DigestTimed timed => new DigestSchedule
        {
            Digest = timed.Digest,
            Dock = timed.Dock,
            Rhythm = timed.Rhythm,
            Weekdays = timed.Weekdays ?? [],
            MonthDay = timed.MonthDay ?? 1,
            Time = timed.LocalTime ?? default,
            Cron = timed.Cron is { } line ? CronDays.Read(line, out _) : null,
            Zone = timed.Zone,
            Holidays = timed.Holidays,
            Season = timed is { SeasonFrom: { } from, SeasonUntil: { } until } ? new SeasonDays(from, until) : null,
            Missed = timed.Missed,
            Off = timed.Off is true,
        },
        _ => null,
    };
}
