namespace FleetWake.Logbook.Schedules;

/// <summary>
/// When one digest of one dock went out and goes out, over all that was ever set for it: a schedule holds from the moment it was
/// set, so that a change neither sends a period again nor takes one back.
/// </summary>
/// <param name="Spans">Schedules, each from when it holds, in order; the first from ever.</param>
/// <param name="Zone">Zone where a schedule names none: that of the dock, else of the office.</param>
/// <param name="Holidays">The operator's holidays.</param>
public sealed record ScheduleLine(IReadOnlyList<(DateTimeOffset From, DigestSchedule Schedule)> Spans, TimeZoneInfo Zone, IReadOnlySet<DateOnly> Holidays)
{
    /// <summary>How far back is looked for the newest occasion [days]: farther than any two of them lie apart.</summary>
    private const int LooksBackDays = (366 * CronDays.FarthestYears) + 31;

    /// <summary>What holds now.</summary>
    public DigestSchedule Present => Spans[^1].Schedule;

    /// <summary>The newest occasion that has come by a moment; null when none has for eight years.</summary>
    public Occasion? Newest(DateTimeOffset now) => Backwards(now).FirstOrDefault();

    /// <summary>The next ones after a moment, by what holds now.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<Occasion> Next(DateTimeOffset now, int most)
    {
        var zone = ZoneOf(Present);
        var today = Day(now, zone);

        // One that was planned before today may wait for holidays to end, however many there are.
        return [.. Occasions.Planned(Present, zone, today.AddDays(-2 - Holidays.Count), today.AddDays(LooksBackDays), Holidays).Where(o => o.At > now).Take(most)];
    }

    /// <summary>Those that have come by a moment, newest first.</summary>
    public IEnumerable<Occasion> Backwards(DateTimeOffset now)
    {
        var until = now;
        for (var n = Spans.Count - 1; n >= 0; n--)
        {
            var (from, schedule) = Spans[n];
            if (from > now && n > 0) continue;
            var zone = ZoneOf(schedule);

            // A day more on the near side, for a clock may jump over midnight.
            var last = Day(until, zone).AddDays(1);
            var first = last.AddDays(-LooksBackDays);
            for (var day = last; day >= first; day = day.AddDays(-1))
            {
                if (Occasions.Of(schedule, zone, day, Holidays) is not { } occasion || occasion.At > until) continue;
                if (n > 0 && occasion.At < from) break;
                yield return occasion;
            }

            if (n == 0) yield break;
            until = from.AddTicks(-1);
        }
    }

    /// <summary>The day that it is at the dock, whose calendar its boats go by, whatever clock the schedule has; for the whole fleet, at the office.</summary>
    public DateOnly DayAt(DateTimeOffset at) => Day(at, Zone);

    /// <summary>The clock of a schedule.</summary>
    public TimeZoneInfo ZoneOf(DigestSchedule schedule) => schedule.Zone is { } own && TimeZoneInfo.TryFindSystemTimeZoneById(own, out var zone) ? zone : Zone;

    private static DateOnly Day(DateTimeOffset at, TimeZoneInfo zone) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);
}
