namespace FleetWake.Store.Fleet;

/// <summary>Whether a fleet is to be looked at anew. Pure.</summary>
public static class FitDue
{
    /// <summary>Time of the night at which a fleet is fitted, by the clock of the operator's office: nobody records then.</summary>
    public static TimeOnly Night { get; } = new(2, 0);

    /// <summary>A fit that failed is tried again after this long: what made it fail seldom mends itself, and it takes seconds.</summary>
    public static readonly TimeSpan AfterFailure = TimeSpan.FromHours(1);

    /// <summary>
    /// Due when records have come and a night has passed since the last look. Before the first fit, and when the record has
    /// doubled since the last look, it does not wait for the night but for a quiet moment: a fleet that was just imported is
    /// fitted the same day, and not with the first tenth of its rows.
    /// </summary>
    /// <param name="look">The last look.</param>
    /// <param name="since">What has come since.</param>
    /// <param name="fitted">Whether a fit was ever recorded.</param>
    /// <param name="now">Now.</param>
    /// <param name="zone">Zone of the operator's office.</param>
    public static bool Of(FitLook look, RecordsSince since, bool fitted, DateTimeOffset now, TimeZoneInfo zone)
    {
        if (look.FailedAt is { } failed && failed <= now && now - failed < AfterFailure) return false;
        if (since.Records == 0 || (!fitted && since.Trials == 0)) return false;
        // A clock that ran ahead and was set back must not put it off until then.
        var before = look.LookedAt is { } at ? (at > now ? DateTimeOffset.MinValue : at) : since.Oldest;
        if (before < LastNight(now, zone)) return true;
        return since.Quiet && (!fitted || since.Records > look.Records);
    }

    /// <summary>The last moment at which it was <see cref="Night"/> in a zone. One that the clocks jump over falls just after the gap; of one that comes twice, the first counts.</summary>
    public static DateTimeOffset LastNight(DateTimeOffset now, TimeZoneInfo zone)
    {
        var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        for (var candidate = day.AddDays(1); ; candidate = candidate.AddDays(-1))
        {
            var at = Instant(candidate.ToDateTime(Night), zone);
            if (at <= now) return at;
        }
    }

    private static DateTimeOffset Instant(DateTime local, TimeZoneInfo zone)
    {
        if (zone.IsAmbiguousTime(local)) return new DateTimeOffset(local, zone.GetAmbiguousTimeOffsets(local).Max());
        var before = local;
        while (zone.IsInvalidTime(before)) before = before.AddMinutes(-15);
        return new DateTimeOffset(local, zone.GetUtcOffset(before));
    }
}
