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

    private const string OfAhead =
        " union select substr(stream_id, length('boat/') + 1) from ahead where stream_id like 'boat/%'"
        + " union select e.data ->> 'boat' from ahead a join " + FleetStore.SchemaName + ".mt_events e on e.tenant_id = $1 and e.stream_id = a.stream_id"
        + " and e.type in " + DirtyBoatSubscription.PartNotices + " where a.stream_id like 'engine/%' or a.stream_id like 'prop/%'";

    private const string AskAll =
        "with ahead as (select distinct stream_id from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and seq_id > " + Reached + ")"
        + " select boat from " + WorkTables.DirtyBoats + " where operator = $1" + OfAhead;

    private const string AskBehind =
        "with ahead as (select distinct stream_id from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and seq_id > " + Reached + ")"
        + " select boat from " + WorkTables.DirtyBoats + " where operator = $1 and parked_at is null" + OfAhead;

    // What another operator imports meanwhile keeps nobody waiting, nor does mail, which changes no finding and no log that is read of.
    private const string AskOperator =
        "select not exists (select from " + WorkTables.DirtyBoats + " where operator = $1 and parked_at is null)"
        + " and not exists (select from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and seq_id > " + Reached + " and stream_id not like 'mail/%')";

    private const string AskEverything =
        "select coalesce((select max(seq_id) from " + FleetStore.SchemaName + ".mt_events), 0) <= " + Reached
        + " and (select count(*) from " + FleetStore.SchemaName + ".mt_event_progression where name like '%:All') >= 2"
        + " and not exists (select from " + WorkTables.DirtyBoats + " where parked_at is null)";

    /// <summary>Whether every event has been looked at and every marked boat assessed; of one operator alone, when one is named. A parked boat does not count.</summary>
    public async Task<bool> UpToDateAsync(CancellationToken ct, string? @operator = null) =>
        (@operator is null ? await source.ReadAsync(AskEverything, r => r.GetBoolean(0), ct) : await source.ReadAsync(AskOperator, r => r.GetBoolean(0), ct, @operator))[0];

    /// <summary>Boats of an operator whose finding will soon be newer: waiting, or not reached by the daemon. Of a parked one there is nothing to wait for.</summary>
    public async Task<IReadOnlySet<string>> BoatsBehindAsync(string @operator, CancellationToken ct) =>
        (await source.ReadAsync(AskBehind, r => r.Text(0), ct, @operator)).OfType<string>().ToHashSet(StringComparer.Ordinal);

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
