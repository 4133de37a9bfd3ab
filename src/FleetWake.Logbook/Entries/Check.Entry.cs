using System.Globalization;
using System.Text.RegularExpressions;

namespace FleetWake.Logbook.Entries;

/// <content>The stamp: times, zone and the error of the device's clock.</content>
public sealed partial class Check
{
    /// <summary>A record may be dated this much ahead of the server and still be now [min].</summary>
    public const double FutureToleranceMinutes = 5;

    /// <summary>
    /// A phone's zone rules may be newer than the server's, and a zone may have been moved by law since:
    /// an offset up to this far from the server's idea of the zone is believed.
    /// </summary>
    public static readonly TimeSpan BelievedOffsetError = TimeSpan.FromHours(2);

    private static readonly DateTimeOffset Earliest = new(1950, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The stamp, checked; null when it cannot be.</summary>
    public Entry? Entry(Stamp? stamp, Arrival arrival)
    {
        if (stamp is null)
        {
            Refuse("/entry", "missing", "missing: give the entry with its id, by, happenedAt and zone");
            return null;
        }

        var before = refusals.Count;
        var id = Required(stamp.Id, "/entry/id", "the device makes a UUID for each entry");
        if (stamp.Id == Guid.Empty) Refuse("/entry/id", "empty_id", "an all-zero UUID is no entry id");
        var by = Id(stamp.By, "/entry/by");
        var zone = Zone(stamp.Zone, "/entry/zone");
        var happened = Time(stamp.HappenedAt, zone, "/entry/happenedAt");
        if (stamp.EnteredAt is null && stamp.Amends is not null)
            Refuse("/entry/enteredAt", "missing", "missing: an amendment says when it was typed, for the last one typed counts");
        if (stamp.Amends is { } amends && amends == stamp.Id)
            Refuse("/entry/amends", "amends_itself", "an amendment has an id of its own");
        else if (stamp.Amends == Guid.Empty)
            Refuse("/entry/amends", "empty_id", "an all-zero UUID is no entry id");
        var entered = stamp.EnteredAt is null ? happened : Time(stamp.EnteredAt, zone, "/entry/enteredAt");
        if (refusals.Count > before) return null;

        Judge(happened, arrival, "/entry/happenedAt");
        if (stamp.EnteredAt is not null) Judge(entered, arrival, "/entry/enteredAt");
        return new Entry(
            id, by, arrival.Device, stamp.Count ?? 0, happened, zone!.Id, entered, arrival.ReceivedAt, arrival.ClockAheadSeconds(), stamp.Amends);
    }

    /// <summary>
    /// Judges a time with the error of the device's clock taken off. Reckoned in seconds, since a clock may be
    /// wrong by more than a calendar holds.
    /// </summary>
    private void Judge(DateTimeOffset time, Arrival arrival, string field)
    {
        var seconds = (time - Earliest).TotalSeconds - arrival.ClockAheadSeconds();
        if (seconds < 0)
            Refuse(field, "too_early", $"{time:yyyy-MM-dd HH:mm zzz} is before 1950 (the device's clock error taken off): check the year, and the device's clock");
        else if (seconds > (arrival.ReceivedAt.AddMinutes(FutureToleranceMinutes) - Earliest).TotalSeconds)
            Refuse(field, "in_the_future", $"{time:yyyy-MM-dd HH:mm zzz} is in the future (the device's clock error taken off): check the date, and the device's clock");
    }

    private DateTimeOffset Time(string? text, TimeZoneInfo? zone, string field)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            Refuse(field, "missing", "missing: give local date and time, e.g. 2026-05-03T10:15:00+12:00");
            return Earliest;
        }

        var match = TimePattern().Match(text);
        if (!match.Success || !DateTime.TryParse(match.Groups["local"].Value, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
        {
            Refuse(field, "not_a_time", "give local date and time as in 2026-05-03T10:15:00+12:00");
            return Earliest;
        }

        if (local.Year is < 1900 or > 9998)
        {
            Refuse(field, local.Year < 1900 ? "too_early" : "in_the_future", $"the year {local.Year} cannot be: check it");
            return Earliest;
        }

        if (zone is null) return Earliest;
        return match.Groups["offset"].Success
            ? WithOffset(local, match.Groups["offset"].Value, zone, field)
            : FromZone(local, zone, field);
    }

    private DateTimeOffset WithOffset(DateTime local, string text, TimeZoneInfo zone, string field)
    {
        // "Z" is no local time: it is the one way to write an instant without saying what the dock's clock showed.
        if (text is "Z" or "z") return TimeZoneInfo.ConvertTime(new DateTimeOffset(local, TimeSpan.Zero), zone);
        var sign = text[0] == '-' ? -1 : 1;
        var offset = sign * TimeSpan.ParseExact(text[1..], @"hh\:mm", CultureInfo.InvariantCulture);
        if (offset.Duration() > TimeSpan.FromHours(14))
        {
            Refuse(field, "not_a_time", $"{text} is no offset of any zone");
            return Earliest;
        }

        var time = new DateTimeOffset(local, offset);
        if ((zone.GetUtcOffset(time) - offset).Duration() > BelievedOffsetError)
            Refuse(field, "offset_not_of_zone", $"{text} does not belong to {zone.Id}: give the dock's own offset or leave it out");
        return time;
    }

    private DateTimeOffset FromZone(DateTime local, TimeZoneInfo zone, string field)
    {
        if (zone.IsInvalidTime(local))
            Refuse(field, "time_skipped", $"the clocks in {zone.Id} went forward over {local:yyyy-MM-dd HH:mm}: check the time");
        else if (zone.IsAmbiguousTime(local))
            Refuse(field, "time_twice", $"{local:yyyy-MM-dd HH:mm} came twice in {zone.Id}: give the offset with it");
        else
            return new DateTimeOffset(local, zone.GetUtcOffset(local));
        return Earliest;
    }

    [GeneratedRegex(@"\A(?<local>[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]{1,7})?)?)(?<offset>[Zz]|[+-][01][0-9]:[0-5][0-9])?\z")]
    private static partial Regex TimePattern();
}
