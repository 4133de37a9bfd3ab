using FleetWake.Store.Import;
using FleetWake.Store.Records;
using Marten;

namespace FleetWake.Import;

/// <summary>What an import was asked.</summary>
/// <param name="Folder">Folder of the sheets.</param>
/// <param name="Operator">The operator.</param>
/// <param name="Defaults">What stands for cells left out.</param>
/// <param name="DryRun">Look only; record nothing.</param>
/// <param name="Report">File for the bad rows; null for the usual one in the folder.</param>
/// <param name="Output">Another file that is written; null for none.</param>
public sealed record ImportRequest(string Folder, string Operator, RowDefaults Defaults, bool DryRun = false, string? Report = null, string? Output = null)
{
    /// <summary>The file for the bad rows.</summary>
    public string ReportPath => ImportFolder.NoSheet(Report ?? Path.Combine(Folder, ImportFolder.ReportName), "--report");

    /// <summary>What is written, as full paths: they may lie in the folder, and are no sheets.</summary>
    internal IReadOnlyList<string> Writes => Output is null ? [ReportPath] : [ReportPath, ImportFolder.NoSheet(Output, "--out")];
}

/// <summary>
/// Brings a folder of sheets into the record, a chunk of rows a transaction. Whenever it ends, what it recorded is
/// recorded, and another run goes on from there: rows that came before are repeats.
/// </summary>
/// <param name="store">The store.</param>
/// <param name="time">The clock.</param>
public sealed class ImportRun(IDocumentStore store, TimeProvider time)
{
    private const int MostHeldTold = 10;

    /// <summary>Runs it; cancelling ends it after the chunk in hand.</summary>
    public async Task<ImportTotals> RunAsync(ImportRequest request, CancellationToken ct)
    {
        using var report = new BadRowReport(request.ReportPath);
        var folder = ImportFolder.Open(request);
        report.Clear();
        folder.Survey(ct);
        var progress = new ImportProgress(folder, time);
        var bulk = new BulkRecorder(store, request.Operator);
        var totals = default(ImportTotals);
        var held = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var chunk in folder.Rows().Chunk(RowChunk.Rows))
        {
            if (ct.IsCancellationRequested) break;
            foreach (var answered in await RowChunk.TakeAsync(bulk, chunk, time.GetUtcNow(), keep: !request.DryRun))
            {
                totals = totals.And(answered.Answer);
                foreach (var bad in answered.Bad) report.Tell(bad);
                foreach (var what in answered.WaitsFor) held[what] = held.GetValueOrDefault(what) + 1;
            }

            progress.Tell(chunk[^1].File, totals.Rows);
        }

        report.Close();
        foreach (var (what, rows) in held.Take(MostHeldTold)) Console.WriteLine($"  held: {what} ({rows} rows)");
        if (held.Count > MostHeldTold) Console.WriteLine($"  held: and {held.Count - MostHeldTold} more");
        progress.End(totals.Rows);
        return totals;
    }
}
