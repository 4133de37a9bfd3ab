using FleetWake.Store.Findings;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Histories;

/// <content>
/// Which findings are older than their record. The daemon marks boats, so its marks alone say nothing of what it has not
/// reached: events behind its progress count as well, and all of them where it never ran.
/// </content>
public sealed partial class FleetReading
{
    /// <summary>The newest event that every step of the daemon has passed; 0 where it never ran.</summary>
    internal const string Reached =
        "(select case when count(*) >= 2 then min(last_seq_id) else 0 end from " + FleetStore.SchemaName + ".mt_event_progression where name like '%:All')";

    // Any boat, engine or prop: which boats an event bears on is for the daemon to find out. Alarms and mail change no finding.
    private const string AskOne =
        "select not exists (select from " + WorkTables.DirtyBoats + " where operator = $1 and boat = $2)"
        + " and not exists (select from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and seq_id > " + Reached
        + " and (stream_id like 'boat/%' or stream_id like 'engine/%' or stream_id like 'prop/%'))";

    private const string AskAll =
        "with ahead as (select distinct stream_id from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and seq_id > " + Reached + ")"
        + " select boat from " + WorkTables.DirtyBoats + " where operator = $1"
        + " union select substr(stream_id, length('boat/') + 1) from ahead where stream_id like 'boat/%'"
        + " union select e.data ->> 'boat' from ahead a join " + FleetStore.SchemaName + ".mt_events e on e.tenant_id = $1 and e.stream_id = a.stream_id"
        + " and e.type in " + DirtyBoatSubscription.PartNotices + " where a.stream_id like 'engine/%' or a.stream_id like 'prop/%'";

    /// <summary>
    /// Whether every record of a boat is in its finding, as far as can be told. Ask before the finding is read: what comes
    /// in between makes the finding newer, not the answer wrong.
    /// </summary>
    public async Task<bool> IsUpToDateAsync(string @operator, string boat, CancellationToken ct)
    {
        await using var command = source.CreateCommand(AskOne);
        command.Parameters.Add(new NpgsqlParameter { Value = @operator });
        command.Parameters.Add(new NpgsqlParameter { Value = boat });
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    /// <summary>Boats of an operator whose finding is older than their record: waiting, parked, or not reached by the daemon.</summary>
    public async Task<IReadOnlyList<string>> StaleBoatsAsync(string @operator, CancellationToken ct)
    {
        await using var command = source.CreateCommand(AskAll);
        command.Parameters.Add(new NpgsqlParameter { Value = @operator });
        await using var reader = await command.ExecuteReaderAsync(ct);
        var boats = new List<string>();
        while (await reader.ReadAsync(ct)) boats.Add(reader.GetString(0));
        return [.. boats.Order(StringComparer.Ordinal)];
    }
}
