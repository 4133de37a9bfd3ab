using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Import;

namespace FleetWake.Import;

/// <summary>A folder of sheets as the logs that an import of it would make, without a database.</summary>
/// <param name="Logs">The logs.</param>
/// <param name="Keys">Key of the row that each entry came from.</param>
/// <param name="Totals">Rows read and left out.</param>
internal sealed record FolderLogs(FleetLogs Logs, IReadOnlyDictionary<Guid, string> Keys, (int Rows, int Refused) Totals)
{
    /// <summary>Reads a folder through the same rows and the same decisions as an import; bad rows go into its report.</summary>
    /// <param name="request">The folder, and whose keys its rows have.</param>
    /// <param name="time">The clock, for which dates lie in the future.</param>
    /// <param name="ct">Ends it early.</param>
    public static FolderLogs Read(ImportRequest request, TimeProvider time, CancellationToken ct)
    {
        using var report = new BadRowReport(request.ReportPath);
        var folder = ImportFolder.Open(request);
        report.Clear();
        folder.Survey(ct);
        var (rows, bad) = (0, 0);
        var logs = new FleetLogs();
        var keys = new Dictionary<Guid, string>();
        var arrival = new Arrival("import", time.GetUtcNow(), null);
        foreach (var row in folder.Rows())
        {
            ct.ThrowIfCancellationRequested();
            rows++;
            var decision = row.Command is null ? null : row.Kind.Decide(row.Command, arrival);
            if (decision is Decision.Keep keep)
            {
                logs.Add(keep.Facts);
                keys[row.Command!.Entry!.Id!.Value] = row.Key!;
                continue;
            }

            bad++;
            foreach (var told in decision is Decision.Refuse refused ? refused.Refusals.Select(row.Told) : row.Bad) report.Tell(told);
        }

        report.Close();
        return new FolderLogs(logs, keys, (rows, bad));
    }
}
