using FleetWake.Store.Mail;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Nodes;

/// <summary>Reads how the work stands, by the database's clock.</summary>
public sealed class WorkStateReading(NpgsqlDataSource source, NodeBook nodes, MailLedger ledger)
{
    // A step that never ran has no row of progress: everything is behind it. Counting a whole record would take long.
    private const string Ask =
        "with folded as (select case when count(*) >= 2 then min(last_seq_id) else 0 end as upto from " + FleetStore.SchemaName + ".mt_event_progression where name like '%:All'),"
        + " behind as (select count(*) as events, min(timestamp) as oldest from (select timestamp from " + FleetStore.SchemaName + ".mt_events"
        + " where seq_id > (select upto from folded) order by seq_id limit 100001) as newer),"
        + " boats as (select count(*) filter (where parked_at is null) as waiting, min(marked_at) filter (where parked_at is null) as oldest,"
        + " count(parked_at) as parked from " + WorkTables.DirtyBoats + ")"
        + " select b.events, coalesce(extract(epoch from clock_timestamp() - b.oldest), 0)::float8, d.waiting::int,"
        + " coalesce(extract(epoch from clock_timestamp() - d.oldest), 0)::float8, d.parked::int from behind b, boats d";

    /// <summary>How the work stands now.</summary>
    public async Task<WorkState> NowAsync(CancellationToken ct)
    {
        var mails = await ledger.CountsAsync(ct);
        var known = await nodes.AllAsync(ct);
        await using var command = source.CreateCommand(Ask);
        await using var reader = await command.ExecuteReaderAsync(ct);
        await reader.ReadAsync(ct);
        return new WorkState(
            reader.GetInt64(0), Age(reader.GetDouble(1)), reader.GetInt32(2), Age(reader.GetDouble(3)), reader.GetInt32(4), mails, known);
    }

    // An event's time is the server's, but a restored database may hold later ones: nothing is older than now.
    private static TimeSpan Age(double seconds) => TimeSpan.FromSeconds(Math.Max(seconds, 0));
}
