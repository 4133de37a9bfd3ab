using FleetWake.Logbook.Entries;
using FleetWake.Store.Import;

namespace FleetWake.Import;

/// <summary>Gathers records as rows and writes a folder of sheets, one a kind.</summary>
/// <param name="by">Id of the person who told them.</param>
/// <param name="zone">IANA zone of their times.</param>
public sealed class SheetWriter(string by, string zone)
{
    private readonly Dictionary<string, List<Dictionary<string, string>>> sheets = new(StringComparer.Ordinal);

    /// <summary>Rows gathered.</summary>
    public int Rows => sheets.Values.Sum(s => s.Count);

    /// <summary>Adds a record without its stamp.</summary>
    /// <param name="key">Its row key.</param>
    /// <param name="happenedAt">When it happened, by the clock of the zone.</param>
    /// <param name="record">The record.</param>
    public void Add<T>(string key, DateTime happenedAt, T record)
        where T : ICommand<T>
    {
        if (!sheets.TryGetValue(T.Kind, out var rows)) sheets.Add(T.Kind, rows = []);
        var cells = Templates.Cells(RecordKind.Find(T.Kind)!, record).ToDictionary(c => c.Column, c => c.Text, StringComparer.Ordinal);
        (cells[SheetHead.Key], cells[SheetHead.HappenedAt], cells["by"], cells["zone"]) = (key, $"{happenedAt:yyyy-MM-dd HH:mm}", by, zone);
        rows.Add(cells);
    }

    /// <summary>Writes the sheets into a folder, over those that are there.</summary>
    public void WriteTo(string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var (kind, rows) in sheets)
        {
            string[] stamp = [SheetHead.Key, SheetHead.HappenedAt, "by", "zone"];
            string[] columns = [.. stamp.Concat(rows.SelectMany(r => r.Keys)).Distinct(StringComparer.Ordinal)];
            File.WriteAllLines(
                Path.Combine(folder, kind + ".csv"),
                rows.Select(r => CsvText.Line(columns.Select(c => r.GetValueOrDefault(c) ?? ""))).Prepend(CsvText.Line(columns)));
        }
    }
}
