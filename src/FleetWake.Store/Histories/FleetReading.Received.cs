using FleetWake.Store.Schema;

namespace FleetWake.Store.Histories;

/// <content>What is new on record.</content>
public sealed partial class FleetReading
{
    private const string Received =
        "select (data -> 'entry' ->> 'id')::uuid, substr(stream_id, length('boat/') + 1), left(data -> 'entry' ->> 'happenedAt', 10) from " + FleetStore.SchemaName + ".mt_events"
        + " where tenant_id = $1 and stream_id like 'boat/%' and (data -> 'entry' ->> 'receivedAt')::timestamptz > $2";

    /// <summary>Records of an operator's boats that were received after a moment, whenever they happened.</summary>
    public Task<IReadOnlyList<ReceivedRecord>> ReceivedSinceAsync(string @operator, DateTimeOffset after, CancellationToken ct) =>
        source.ReadAsync(
            Received,
            r => new ReceivedRecord(r.GetGuid(0), r.GetString(1), DateOnly.ParseExact(r.GetString(2), "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)),
            ct, @operator, after.ToUniversalTime());
}

/// <summary>A record of a boat, in short.</summary>
/// <param name="Entry">Its entry id.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="On">Dock's date on which it happened.</param>
public sealed record ReceivedRecord(Guid Entry, string Boat, DateOnly On);
