using System.Globalization;

namespace FleetWake.Logbook.Entries;

/// <summary>The stamp as a device sends it, before anything is checked.</summary>
/// <param name="Id">Entry id made by the device (a UUID).</param>
/// <param name="By">Id of the person: letters, digits, dot, hyphen, underscore.</param>
/// <param name="HappenedAt">Local date and time, with offset where known: <c>2026-05-03T10:15:00+12:00</c>.</param>
/// <param name="Zone">IANA zone of the dock.</param>
/// <param name="Count">The device's own counter; 0 when the device keeps none.</param>
/// <param name="EnteredAt">When it was typed; needed on an amendment, else taken to be <paramref name="HappenedAt"/>.</param>
/// <param name="Amends">Id of the entry that this record replaces in full.</param>
public sealed record Stamp(
    Guid? Id,
    string? By,
    string? HappenedAt,
    string? Zone,
    long? Count = null,
    string? EnteredAt = null,
    Guid? Amends = null)
{
    /// <summary>The stamp of what happens as it is recorded.</summary>
    /// <param name="id">Entry id.</param>
    /// <param name="by">Id of the person.</param>
    /// <param name="now">When.</param>
    /// <param name="zone">IANA zone of the dock, or of the office.</param>
    public static Stamp At(Guid id, string? by, DateTimeOffset now, string zone) => new(
        id, by, TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(zone)).ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture), zone);
}

/// <summary>How a record reached the server.</summary>
/// <param name="Device">Id of the sending device.</param>
/// <param name="ReceivedAt">Server time of arrival, UTC.</param>
/// <param name="SentAt">The device's own clock at sending; measures how wrong that clock is. Null for importers.</param>
public sealed record Arrival(string Device, DateTimeOffset ReceivedAt, DateTimeOffset? SentAt)
{
    /// <summary>Differences smaller than this are travel time, not a wrong clock [s].</summary>
    public const double ClockToleranceSeconds = 120;

    /// <summary>Id of the device that the office's pages stand for.</summary>
    public const string Office = "office";

    /// <summary>How a record of the office's pages comes.</summary>
    public static Arrival AtOffice(DateTimeOffset now) => new(Office, now, null);

    /// <summary>How far the device's clock runs ahead of the server's [s]; negative when behind, 0 within the tolerance.</summary>
    public double ClockAheadSeconds()
    {
        if (SentAt is not { } sent) return 0;
        var ahead = (sent - ReceivedAt).TotalSeconds;
        return Math.Abs(ahead) <= ClockToleranceSeconds ? 0 : Math.Round(ahead);
    }
}
