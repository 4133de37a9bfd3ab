using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Records;
using Marten;

namespace FleetWake.Store.Import;

/// <summary>What a table would come to, nothing of it recorded.</summary>
/// <param name="Draft">The table.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Totals">What would become of the rows that were looked at.</param>
/// <param name="Bad">The first rows that would not be recorded as they stand, with why.</param>
/// <param name="First">The first rows that would be recorded.</param>
/// <param name="Held">What rows would wait for, and how many.</param>
/// <param name="DatesAlone">Rows without a time of day.</param>
public sealed record TablePreview(
    ImportDraft Draft, IReadOnlyList<string> Columns, ImportTotals Totals, IReadOnlyList<BadCell> Bad, IReadOnlyList<ReadRow> First, IReadOnlyList<(string What, int Rows)> Held, int DatesAlone);

/// <summary>
/// Brings one table into the record as the import command does a folder: the same columns, the same row keys, the same
/// checks. It is taken in steps of some seconds; each row's key makes a repeat harmless, so a step that was lost is taken again.
/// </summary>
/// <param name="store">The store.</param>
/// <param name="drafts">Where the tables lie meanwhile.</param>
/// <param name="time">The clock.</param>
public sealed class TableImport(IDocumentStore store, ImportDrafts drafts, TimeProvider time)
{
    /// <summary>Most rows that are looked at beforehand.</summary>
    public const int MostLookedAt = 20_000;

    /// <summary>Most bad cells that are told.</summary>
    public const int MostBad = 50;

    private const int MostShown = 10;
    private const int MostHeldTold = 10;

    /// <summary>Opens a table and keeps it; what is wrong with it as a whole, when it cannot be read.</summary>
    public async Task<(ImportDraft? Draft, IReadOnlyList<string> Complaints)> OpenAsync(
        string @operator, string person, string name, RecordKind kind, RowDefaults defaults, byte[] bytes, CancellationToken ct)
    {
        var complaints = new List<string>();
        try
        {
            if (ImportTable.Open(name, () => new MemoryStream(bytes, writable: false), kind, defaults, @operator, complaints) is not { } table) return (null, complaints);
            table.Survey(ct);
            var draft = new ImportDraft(Guid.CreateVersion7(time.GetUtcNow()), person, name, kind.Name, defaults, table.Count, default, []);
            await drafts.KeepAsync(@operator, draft, bytes, ct);
            return (draft, []);
        }
        catch (TableException e)
        {
            return (null, [e.Message]);
        }
    }

    /// <summary>Says what a table would come to; null when it is not there.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="person">Who sent it.</param>
    /// <param name="id">Its id.</param>
    /// <param name="may">Whether the person may record a row; what is not allowed is told as refused.</param>
    /// <param name="ct">Ends it early.</param>
    public async Task<TablePreview?> LookAsync(string @operator, string person, Guid id, Func<RecordKind, ICommand, bool> may, CancellationToken ct)
    {
        if (await TableAsync(@operator, person, id, ct) is not var (draft, table)) return null;
        var bulk = new BulkRecorder(store, @operator);
        var (totals, bad, first, held) = (default(ImportTotals), new List<BadCell>(), new List<ReadRow>(), new SortedDictionary<string, int>(StringComparer.Ordinal));
        foreach (var chunk in Allowed(table, may).Take(MostLookedAt).Chunk(RowChunk.Rows))
        {
            ct.ThrowIfCancellationRequested();
            foreach (var answered in await RowChunk.TakeAsync(bulk, chunk, time.GetUtcNow(), keep: false))
            {
                var (row, answer, complaints) = answered;
                totals = totals.And(answer);
                if (bad.Count < MostBad) bad.AddRange(complaints.Take(MostBad - bad.Count));
                if (first.Count < MostShown && answer is { Outcome: Outcome.Recorded or Outcome.Held, Repeat: false }) first.Add(row);
                foreach (var what in answered.WaitsFor) held[what] = held.GetValueOrDefault(what) + 1;
            }
        }

        return new TablePreview(draft, table.Columns, totals, bad, first, [.. held.Take(MostHeldTold).Select(h => (h.Key, h.Value))], table.DatesAlone);
    }

    /// <summary>Records rows of a table for a while, from where it was left, and says how far it is; null when it is not there.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="person">Who sent it.</param>
    /// <param name="id">Its id.</param>
    /// <param name="budget">No chunk is begun after so long.</param>
    /// <param name="may">Whether the person may record a row; what is not allowed is refused.</param>
    /// <param name="ct">Ends it after the chunk in hand.</param>
    public async Task<ImportDraft?> GoOnAsync(string @operator, string person, Guid id, TimeSpan budget, Func<RecordKind, ICommand, bool> may, CancellationToken ct)
    {
        var since = time.GetTimestamp();
        if (await TableAsync(@operator, person, id, ct) is not var (draft, table)) return null;
        var (bulk, before) = (new BulkRecorder(store, @operator), draft.Totals.Rows);
        foreach (var chunk in Allowed(table, may).Skip(before).Chunk(RowChunk.Rows))
        {
            var (totals, bad) = (draft.Totals, draft.Bad.ToList());
            foreach (var (_, answer, complaints) in await RowChunk.TakeAsync(bulk, chunk, time.GetUtcNow(), keep: true))
            {
                totals = totals.And(answer);
                if (bad.Count < MostBad) bad.AddRange(complaints.Take(MostBad - bad.Count));
            }

            var next = draft with { Totals = totals, Bad = bad };
            if (!await drafts.NoteAsync(@operator, next, draft.Totals.Rows, CancellationToken.None)) break;
            draft = next;
            if (ct.IsCancellationRequested || time.GetElapsedTime(since) > budget) break;
        }

        return draft;
    }

    /// <summary>How far a table is; null when it is not there.</summary>
    public async Task<ImportDraft?> FindAsync(string @operator, string person, Guid id, CancellationToken ct) =>
        (await drafts.FindAsync(@operator, person, id, withBytes: false, ct))?.Draft;

    private static IEnumerable<ReadRow> Allowed(ImportTable table, Func<RecordKind, ICommand, bool> may) => table.Rows().Select(row =>
        row.Command is { } command && !may(row.Kind, command)
            ? row with { Command = null, Bad = [new BadCell(row.File, row.Line, "", "", Permissions.NotForThisRole.Message)] }
            : row);

    private async Task<(ImportDraft Draft, ImportTable Table)?> TableAsync(string @operator, string person, Guid id, CancellationToken ct)
    {
        if (await drafts.FindAsync(@operator, person, id, withBytes: true, ct) is not var (draft, bytes)) return null;
        var table = ImportTable.Open(draft.Name, () => new MemoryStream(bytes, writable: false), RecordKind.Find(draft.Kind)!, draft.Defaults, @operator, [])!;
        table.Survey(ct);
        return (draft, table);
    }
}
