using System.Text.Json;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Import;

/// <summary>A table that somebody sent to be looked at before it is recorded, and how far its recording is.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Person">Who sent it.</param>
/// <param name="Name">Name of its file.</param>
/// <param name="Kind">The kind of its records.</param>
/// <param name="Defaults">What stands for cells left out.</param>
/// <param name="Rows">How many rows it has.</param>
/// <param name="Totals">What became of the rows that were taken so far.</param>
/// <param name="Bad">The first of them that are not in the record, with why.</param>
public sealed record ImportDraft(Guid Id, string Person, string Name, string Kind, RowDefaults Defaults, int Rows, ImportTotals Totals, IReadOnlyList<BadCell> Bad)
{
    /// <summary>Every row was taken.</summary>
    public bool Done => Totals.Rows >= Rows;
}

/// <summary>
/// Tables on their way into the record. They lie in the database, so that whichever node is asked next goes on with them;
/// one a person, and for a day.
/// </summary>
/// <param name="source">The database.</param>
/// <param name="time">The clock.</param>
public sealed class ImportDrafts(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Largest table that is taken [bytes].</summary>
    public const int MostBytes = 20 * 1024 * 1024;

    private static readonly TimeSpan Kept = TimeSpan.FromDays(1);

    /// <summary>Keeps a table; the person's earlier one and those of yesterday go.</summary>
    public async Task KeepAsync(string @operator, ImportDraft draft, byte[] bytes, CancellationToken ct)
    {
        await using var connection = await source.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using (var old = new NpgsqlCommand("delete from " + WorkTables.ImportDrafts + " where (operator = $1 and person = $2) or made_at < $3", connection, transaction))
        {
            old.Parameters.Add(new NpgsqlParameter { Value = @operator });
            old.Parameters.Add(new NpgsqlParameter { Value = draft.Person });
            old.Parameters.Add(new NpgsqlParameter { Value = time.GetUtcNow() - Kept });
            await old.ExecuteNonQueryAsync(ct);
        }

        await using (var insert = new NpgsqlCommand(
            "insert into " + WorkTables.ImportDrafts + " (operator, id, person, made_at, done, draft, bytes) values ($1, $2, $3, $4, 0, $5, $6)", connection, transaction))
        {
            insert.Parameters.Add(new NpgsqlParameter { Value = @operator });
            insert.Parameters.Add(new NpgsqlParameter { Value = draft.Id });
            insert.Parameters.Add(new NpgsqlParameter { Value = draft.Person });
            insert.Parameters.Add(new NpgsqlParameter { Value = time.GetUtcNow() });
            insert.Parameters.Add(new NpgsqlParameter { Value = JsonSerializer.Serialize(draft) });
            insert.Parameters.Add(new NpgsqlParameter { Value = bytes });
            await insert.ExecuteNonQueryAsync(ct);
        }

        await transaction.CommitAsync(ct);
    }

    /// <summary>A table of a person's, with its bytes when they are wanted; null when there is none, or no more.</summary>
    public async Task<(ImportDraft Draft, byte[] Bytes)?> FindAsync(string @operator, string person, Guid id, bool withBytes, CancellationToken ct)
    {
        var sql = "select draft, " + (withBytes ? "bytes" : "''::bytea") + " from " + WorkTables.ImportDrafts + " where operator = $1 and id = $2 and person = $3";
        var rows = await source.ReadAsync(sql, r => (JsonSerializer.Deserialize<ImportDraft>(r.GetString(0))!, r.GetFieldValue<byte[]>(1)), ct, @operator, id, person);
        return rows.Count > 0 ? rows[0] : null;
    }

    /// <summary>
    /// Notes how far a table is. Of two who take the same rows at once, the second one's rows were repeats, and its count is
    /// not noted: false then.
    /// </summary>
    public async Task<bool> NoteAsync(string @operator, ImportDraft draft, int before, CancellationToken ct) =>
        await source.RunAsync(
            "update " + WorkTables.ImportDrafts + " set done = $3, draft = $4 where operator = $1 and id = $2 and done = $5",
            ct, @operator, draft.Id, draft.Totals.Rows, JsonSerializer.Serialize(draft), before) == 1;
}
