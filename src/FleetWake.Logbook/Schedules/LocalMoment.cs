namespace FleetWake.Logbook.Schedules;

/// <summary>The instant of a local time, for what goes out by the clock on the wall.</summary>
public static class LocalMoment
{
    /// <summary>
    /// The instant. A time that the clocks jump over falls on the first moment after the gap; of one that comes twice, the first
    /// counts. A whole day that a zone left out (as when it moved over the date line) begins with the next.
    /// </summary>
    /// <param name="day">The day by the clock of the zone.</param>
    /// <param name="time">The time of that day.</param>
    /// <param name="zone">The zone.</param>
    public static DateTimeOffset Of(DateOnly day, TimeOnly time, TimeZoneInfo zone)
    {
        var local = day.ToDateTime(time);
        if (zone.IsAmbiguousTime(local)) return new DateTimeOffset(local, zone.GetAmbiguousTimeOffsets(local).Max());
        if (!zone.IsInvalidTime(local)) return new DateTimeOffset(local, zone.GetUtcOffset(local));

        var after = local;
        while (zone.IsInvalidTime(after)) after = after.AddMinutes(1);
        return new DateTimeOffset(after, zone.GetUtcOffset(after));
    }
}
