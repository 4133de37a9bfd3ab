using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Photos;

/// <summary>Free text beside entries. It lies in rows that can be erased, for people write names into it; no fact holds any (docs/decisions/0010).</summary>
public sealed class EntryNotes(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Characters of a note.</summary>
    public const int MostCharacters = 1000;

    // A phone mends its own note, and nobody else's.
    private const string Put =
        "insert into " + DockTables.Notes + " (operator, entry, text, device, put_at) values ($1, $2, $3, $4, $5)"
        + " on conflict (operator, entry) do update set text = excluded.text, put_at = excluded.put_at where entry_notes.device = excluded.device";

    /// <summary>Puts the note of an entry; an empty one takes it away. False when another device wrote the one that is there.</summary>
    public async Task<bool> PutAsync(string @operator, Guid entry, string text, string device, CancellationToken ct)
    {
        if (text.Length > 0) return await source.RunAsync(Put, ct, @operator, entry, text, device, time.GetUtcNow()) > 0;
        await source.RunAsync("delete from " + DockTables.Notes + " where operator = $1 and entry = $2 and device = $3", ct, @operator, entry, device);
        return true;
    }

    /// <summary>Notes of some entries, by entry.</summary>
    public async Task<IReadOnlyDictionary<Guid, string>> OfAsync(string @operator, IReadOnlyCollection<Guid> entries, CancellationToken ct) =>
        (await source.ReadAsync(
            "select entry, text from " + DockTables.Notes + " where operator = $1 and entry = any($2)", r => (Entry: r.GetGuid(0), Text: r.GetString(1)), ct, @operator, entries.ToArray()))
        .ToDictionary(n => n.Entry, n => n.Text);
}
