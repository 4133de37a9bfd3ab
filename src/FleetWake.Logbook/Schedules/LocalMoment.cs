namespace FleetWake.Logbook.Schedules;

/// <summary>The instant of a local time, for what goes out by the clock on the wall.</summary>
public static class LocalMoment
{
    /// <summary>
    /// The first moment at which the clock on the wall shows a time or has passed it: of a time that comes twice, the first; of one that
    /// the clocks jump over, the end of the gap.
    /// </summary>
    /// <param name="day">The day by the clock of the zone.</param>
    /// <param name="time">The time of that day.</param>
    /// <param name="zone">The zone.</param>
    public static DateTimeOffset Of(DateOnly day, TimeOnly time, TimeZoneInfo zone)
    {
        // Offsets are asked of instants alone: of local times at the edge of a change the platform answers wrongly for some zones
        // (Europe/Dublin, Africa/Casablanca, America/Dawson among them, seen in the test over all zones).
        var asked = new DateTimeOffset(day.ToDateTime(time), TimeSpan.Zero);
        var (before, after) = (zone.GetUtcOffset(asked.AddDays(-1)), zone.GetUtcOffset(asked.AddDays(1)));
        if (Shown(asked, before, zone) is { } first) return first;
        if (before != after && Shown(asked, after, zone) is { } second) return second;

        var (low, high) = (asked.AddDays(-1), asked.AddDays(1));
        while (high.Ticks - low.Ticks > 1)
        {
            var middle = new DateTimeOffset((low.Ticks + high.Ticks) / 2, TimeSpan.Zero);
            if (middle + zone.GetUtcOffset(middle) < asked) low = middle;
            else high = middle;
        }

        return TimeZoneInfo.ConvertTime(high, zone);
    }

    /// <summary>The instant at which the wall shows that time by an offset; null when the zone has another one then.</summary>
    private static DateTimeOffset? Shown(DateTimeOffset asked, TimeSpan offset, TimeZoneInfo zone) =>
        zone.GetUtcOffset(asked - offset) == offset ? new DateTimeOffset(asked.Ticks, offset) : null;
}
