using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Schedules;

/// <summary>All that an operator's own log tells of when digests go out.</summary>
public sealed class ScheduleBook
{
    private readonly IReadOnlyList<(DateTimeOffset From, IReadOnlyList<DigestSchedule> Schedules)> changes;
    private readonly IReadOnlyDictionary<string, string> docks;

    private ScheduleBook(
        IReadOnlyList<(DateTimeOffset, IReadOnlyList<DigestSchedule>)> changes, IReadOnlyDictionary<string, string> docks, IReadOnlySet<DateOnly> holidays, AlertRule alerts) =>
        (this.changes, this.docks, Holidays, Alerts) = (changes, docks, holidays, alerts);

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
            Changes(office),
            facts.OfType<DockOpened>().GroupBy(d => d.Dock, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Zone, StringComparer.Ordinal),
            facts.OfType<HolidaysSet>().LastOrDefault()?.Dates.ToHashSet() ?? [],
            alerts is null ? AlertRule.Usual : new AlertRule(alerts.QuietFrom, alerts.QuietUntil, TimeSpan.FromMinutes(alerts.GatherMinutes), alerts.ExitWithinHours, alerts.Off is true));
    }

    /// <summary>What was set last, for whichever digests and docks something was.</summary>
    public IReadOnlyList<DigestSchedule> Set =>
        [.. Present.GroupBy(s => (s.Digest, s.Dock)).Select(g => g.Last()).OrderBy(s => s.Digest).ThenBy(s => s.Dock, StringComparer.Ordinal)];

    private IReadOnlyList<DigestSchedule> Present => changes.Count == 0 ? [] : changes[^1].Schedules;

    /// <summary>When a digest goes out to the readers of a dock, or of the whole fleet.</summary>
    /// <param name="digest">The digest.</param>
    /// <param name="dock">The dock; null for the whole fleet.</param>
    /// <param name="zone">Zone of the office, where the dock has none on record.</param>
    public ScheduleLine Of(ScheduledDigest digest, string? dock, TimeZoneInfo zone)
    {
        // A schedule of all docks counts as long as the dock has none of its own.
        var usual = DigestSchedule.Usual(digest);
        var spans = new List<(DateTimeOffset From, DigestSchedule Schedule)> { (DateTimeOffset.MinValue, usual) };
        foreach (var (from, schedules) in changes)
        {
            var ours = schedules.Where(s => s.Digest == digest).ToList();
            var now = (dock is null ? null : ours.LastOrDefault(s => s.Dock == dock)) ?? ours.LastOrDefault(s => s.Dock is null) ?? usual;
            if (!ReferenceEquals(spans[^1].Schedule, now)) spans.Add((from, now));
        }

        return new ScheduleLine(spans, dock is not null && docks.TryGetValue(dock, out var there) && TimeZoneInfo.TryFindSystemTimeZoneById(there, out var found) ? found : zone, Holidays);
    }

    /// <summary>What stood from each moment at which something was told, amended or taken back: what is taken back today counted until today.</summary>
    private static List<(DateTimeOffset From, IReadOnlyList<DigestSchedule> Schedules)> Changes(FactLog office)
    {
        var facts = office.Facts.Where(f => f is ScheduleSet or DigestTimed or Retracted).ToList();
        var read = facts.Where(f => f is not Retracted).ToDictionary(f => f.Entry.Id, f => Read(f)!);
        return
        [
            .. facts.Select(f => f.Entry.ReceivedAt).Distinct().Order().Select(at => (at, (IReadOnlyList<DigestSchedule>)
            [
                .. Effective.Of([.. facts.Where(f => f.Entry.ReceivedAt <= at)]).Facts.Where(f => f is not Retracted).OrderBy(f => f.Entry.ReceivedAt).Select(f => read[f.Entry.Id]),
            ])),
        ];
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
