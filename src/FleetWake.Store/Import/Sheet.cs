using System.Text;
using FleetWake.Logbook.Entries;
using nietras.SeparatedValues;

namespace FleetWake.Store.Import;

/// <summary>One line of a sheet; more than one where a quotation mark spans several.</summary>
/// <param name="Line">The line of the file on which it begins, from 1.</param>
/// <param name="LastLine">The line on which it ends.</param>
/// <param name="Cells">Its cells, trimmed.</param>
internal sealed record SheetRow(int Line, int LastLine, IReadOnlyList<string> Cells);

/// <summary>A CSV file of one kind of record, its head read and its text known to be UTF-8.</summary>
internal sealed class Sheet
{
    private readonly Func<Stream> open;
    private readonly int hintLines;

    private Sheet(string name, Func<Stream> open, RecordKind kind, SheetHead head, int hintLines) =>
        (Name, this.open, Kind, Head, this.hintLines) = (name, open, kind, head, hintLines);

    /// <summary>The kind of its records.</summary>
    public RecordKind Kind { get; }

    /// <summary>Its columns.</summary>
    public SheetHead Head { get; }

    /// <summary>Its name without the folder.</summary>
    public string Name { get; }

    /// <summary>Opens a sheet; null when its text or its head is wrong, which is added to the complaints.</summary>
    public static Sheet? Open(string name, Func<Stream> open, RecordKind kind, RowDefaults defaults, List<string> complaints)
    {
        if (Utf8Check.Complaint(open) is { } encoding)
        {
            complaints.Add(encoding);
            return null;
        }

        string? first;
        string? second;
        using (var text = Text(open)) (first, second) = (text.ReadLine(), text.ReadLine());

        // A spreadsheet's own hint at what separates the columns.
        var hint = first is ['s' or 'S', 'e' or 'E', 'p' or 'P', '=', _] ? first[4] : (char?)null;
        var header = hint is null ? first : second;
        if (string.IsNullOrWhiteSpace(header))
        {
            complaints.Add("its first line is empty: it holds the names of the columns");
            return null;
        }

        var delimiter = hint ?? SheetHead.Sniff(header);
        var before = complaints.Count;
        var names = Rows(name, open, delimiter, hint is null ? 0 : 1).First().Cells;
        var head = SheetHead.Read(kind, delimiter, names, defaults, complaints);
        return complaints.Count == before ? new Sheet(name, open, kind, head, hint is null ? 0 : 1) : null;
    }

    /// <summary>Its rows below the head, without those that are empty throughout.</summary>
    public IEnumerable<SheetRow> Rows() => Rows(Name, open, Head.Delimiter, hintLines).Skip(1).Where(r => r.Cells.Any(c => c.Length > 0));

    private static IEnumerable<SheetRow> Rows(string name, Func<Stream> open, char delimiter, int hintLines)
    {
        using var text = Text(open);
        for (var i = 0; i < hintLines; i++) text.ReadLine();
        using var reader = Sep.New(delimiter)
            .Reader(o => o with { HasHeader = false, Unescape = true, DisableColCountCheck = true })
            .From(text);
        var line = hintLines + 1;
        while (true)
        {
            var (row, ended) = Next(reader, name, hintLines, line);
            if (ended) yield break;
            line = row!.LastLine + 1;
            yield return row;
        }
    }

    private static (SheetRow? Row, bool Ended) Next(SepReader reader, string name, int hintLines, int line)
    {
        try
        {
            if (!reader.MoveNext()) return (null, true);
        }
        catch (NotSupportedException)
        {
            // The library's own limit of a row, some 16 million letters.
            throw new TableException($"{name}: a quotation mark opens on line {line} or below and is not closed: close it on its own line.");
        }

        var row = reader.Current;
        var cells = new string[row.ColCount];
        for (var i = 0; i < cells.Length; i++) cells[i] = row[i].ToString().Trim();
        var from = row.LineNumberFrom + hintLines;
        return (new SheetRow(from, Math.Max(from, row.LineNumberToExcl + hintLines - 1), cells), false);
    }

    private static StreamReader Text(Func<Stream> open) => new(open(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true));
}
