using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Trials;
using FleetWake.Store.Histories;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Fleet;

/// <summary>The rows that remember when each operator's fleet was looked at last. Whoever holds a row fits that fleet, and nobody else.</summary>
internal static class FitLooks
{
    /// <summary>No record for this long: the first rows of an import are no fleet. Judgement.</summary>
    public static readonly TimeSpan Quiet = TimeSpan.FromSeconds(10);

    private const string Columns = "through_sequence, records, looked_at, left_out, failed_at, last_error";

    private const string Read = "select " + Columns + " from " + WorkTables.FleetFits + " where operator = $1";

    private const string Make =
        "insert into " + WorkTables.FleetFits + " (operator, through_sequence, records) values ($1, 0, 0) on conflict do nothing";

    private const string Keep =
        "update " + WorkTables.FleetFits + " set through_sequence = $2, records = $3, looked_at = $4, left_out = $5, failed_at = null, last_error = null where operator = $1";

    private const string Failed =
        "update " + WorkTables.FleetFits + " set failed_at = $2, last_error = $3 where operator = $1";

    // Only what the daemon has folded is looked at, so only that counts as looked at; what is on its way makes it not quiet.
    private static readonly string Since =
        "with folded as (select " + FleetReading.Reached + " as upto)"
        + " select f.upto, count(e.seq_id) filter (where e.seq_id <= f.upto),"
        + " count(e.seq_id) filter (where e.seq_id <= f.upto and e.type in ('" + LogbookJson.StoredNames[typeof(TrialRun)] + "', '" + LogbookJson.StoredNames[typeof(NormalisedRpmRead)] + "')),"
        + " min(e.timestamp) filter (where e.seq_id <= f.upto), coalesce(max(e.timestamp) < now() - $3::interval, true)"
        + " from folded f left join " + FleetStore.SchemaName + ".mt_events e on e.tenant_id = $1 and e.seq_id > $2"
        + " and (e.stream_id like 'boat/%' or e.stream_id like 'engine/%' or e.stream_id like 'prop/%') group by f.upto";

    /// <summary>The last look at an operator's fleet.</summary>
    public static async Task<FitLook> OfAsync(NpgsqlDataSource source, string @operator, CancellationToken ct)
    {
        await using var command = source.CreateCommand(Read);
        return await OneAsync(command, @operator, ct) ?? FitLook.None;
    }

    /// <summary>The last looks, by operator.</summary>
    public static async Task<IReadOnlyList<(string Operator, FitLook Look)>> AllAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var command = source.CreateCommand("select " + Columns + ", operator from " + WorkTables.FleetFits + " order by operator");
        await using var reader = await command.ExecuteReaderAsync(ct);
        var looks = new List<(string, FitLook)>();
        while (await reader.ReadAsync(ct)) looks.Add((reader.GetString(6), Look(reader)));
        return looks;
    }

    /// <summary>Sees to it that the operator has a row to claim.</summary>
    public static async Task MakeAsync(NpgsqlDataSource source, string @operator, CancellationToken ct)
    {
        await using var command = source.CreateCommand(Make);
        command.Parameters.Add(new NpgsqlParameter { Value = @operator });
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Claims an operator's fleet until the transaction ends; null when another worker holds it and <paramref name="wait"/> is not asked for.</summary>
    public static async Task<FitLook?> ClaimAsync(NpgsqlConnection connection, string @operator, bool wait, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Read + (wait ? " for update" : " for update skip locked"), connection);
        if (wait) command.CommandTimeout = 0; // Another one's fit may take its time; the caller can give up.
        return await OneAsync(command, @operator, ct);
    }

    /// <summary>What has come since a look.</summary>
    public static async Task<RecordsSince> SinceAsync(NpgsqlConnection connection, string @operator, FitLook look, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Since, connection) { Parameters = { new() { Value = @operator }, new() { Value = look.ThroughSequence }, new() { Value = Quiet } } };
        await using var reader = await command.ExecuteReaderAsync(ct);
        await reader.ReadAsync(ct);
        return new RecordsSince(
            reader.GetInt64(0), reader.GetInt64(1), reader.GetInt64(2), await reader.IsDBNullAsync(3, ct) ? null : reader.GetFieldValue<DateTimeOffset>(3), reader.GetBoolean(4));
    }

    /// <summary>Remembers a look, in the transaction that holds its row.</summary>
    public static Task KeepAsync(NpgsqlConnection connection, string @operator, FitLook look, CancellationToken ct) =>
        RunAsync(new NpgsqlCommand(Keep, connection), ct, @operator, look.ThroughSequence, look.Records, look.LookedAt, look.LeftOut);

    /// <summary>Remembers that a fit failed.</summary>
    public static Task FailedAsync(NpgsqlDataSource source, string @operator, DateTimeOffset at, string why, CancellationToken ct) =>
        RunAsync(source.CreateCommand(Failed), ct, @operator, at, why);

    private static async Task RunAsync(NpgsqlCommand command, CancellationToken ct, params object?[] values)
    {
        await using (command)
        {
            foreach (var value in values) command.Parameters.Add(new NpgsqlParameter { Value = value ?? DBNull.Value });
            await command.ExecuteNonQueryAsync(ct);
        }
    }

    private static async Task<FitLook?> OneAsync(NpgsqlCommand command, string @operator, CancellationToken ct)
    {
        command.Parameters.Add(new NpgsqlParameter { Value = @operator });
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct) ? Look(reader) : null;
    }

    private static FitLook Look(NpgsqlDataReader row)
    {
        DateTimeOffset? Moment(int column) => row.IsDBNull(column) ? null : row.GetFieldValue<DateTimeOffset>(column);
        string? Text(int column) => row.IsDBNull(column) ? null : row.GetString(column);
        return new FitLook(row.GetInt64(0), row.GetInt64(1), Moment(2), Text(3), Moment(4), Text(5));
    }
}
