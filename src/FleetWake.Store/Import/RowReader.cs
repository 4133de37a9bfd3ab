using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>Why a row is not recorded, with its place.</summary>
/// <param name="File">The sheet.</param>
/// <param name="Line">The line on which the row begins, from 1.</param>
/// <param name="Column">The column; empty when it is the row as a whole.</param>
/// <param name="Value">What stands there.</param>
/// <param name="Why">What is wrong and how to mend it.</param>
public sealed record BadCell(string File, int Line, string Column, string Value, string Why);

/// <summary>
/// Turns the rows of a sheet into the records that the API takes: the same JSON, read by the same strict reader, so that
/// a row is refused for what a phone's record would be, and told by its column.
/// </summary>
internal sealed class RowReader
{
    private readonly Sheet sheet;
    private readonly RowDefaults defaults;
    private readonly Cells cells;
    private readonly Func<string, string, Guid> entryId;
    private readonly int keyAt;
    private readonly int[] subjects;

    public RowReader(Sheet sheet, RowDefaults defaults, NumberMarks marks, Func<string, string, Guid> entryId)
    {
        (this.sheet, this.defaults, this.entryId) = (sheet, defaults, entryId);
        cells = new Cells(marks, entryId);
        keyAt = IndexOf(SheetHead.Key);
        subjects = RowKey.SubjectsOf(sheet.Head, sheet.Kind);
    }

    /// <summary>
    /// The row's key: its own, else its date and time with what it is about. An amendment is about the same as what it
    /// amends, so the time of typing tells them apart. Null when neither can be read.
    /// </summary>
    public string? KeyOf(SheetRow row)
    {
        if (At(row, keyAt) is { Length: > 0 } own) return own;
        if (At(row, IndexOf(SheetHead.HappenedAt)) is not { Length: > 0 } time) return null;
        var words = subjects.Select(i => At(row, i)).Where(c => c.Length > 0).Prepend(Cells.Happened(time));
        return string.Join(' ', At(row, IndexOf("entered_at")) is { Length: > 0 } entered ? words.Append("entered " + Cells.Time(entered)) : words);
    }

    /// <summary>The row says on which day, and not when.</summary>
    public bool IsDateAlone(SheetRow row) => Cells.IsDateAlone(At(row, IndexOf(SheetHead.HappenedAt)));

    /// <summary>The numbers of a row as they are written.</summary>
    public IEnumerable<string> NumbersOf(SheetRow row) => row.Cells.Zip(sheet.Head.Columns)
        .Where(c => c.Second?.Field.Kind is CellKind.Number or CellKind.Whole).SelectMany(c => Cells.Items(c.First));

    /// <summary>The record of a row, or what is wrong with it.</summary>
    public (ICommand? Command, IReadOnlyList<BadCell> Bad) Read(SheetRow row)
    {
        if (row.LastLine > row.Line)
            return (null, [Bad(row, "", "", $"a quotation mark opens here, and everything up to line {row.LastLine} was taken for one cell: close it on its own line")]);
        if (row.Cells.Count != sheet.Head.Columns.Count)
            return (null, [Bad(row, "", "", $"has {row.Cells.Count} cells where the first line names {sheet.Head.Columns.Count} columns: put text that holds the separator in quotation marks")]);

        if (KeyOf(row) is null)
            return (null, [Bad(row, SheetHead.HappenedAt, "", "missing: give local date and time, e.g. 2026-05-03 10:15")]);

        var record = new JsonObject { ["entry"] = Stamp(row) };
        var bad = new List<BadCell>();
        var filled = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (i, column) in sheet.Head.Columns.Index())
        {
            var text = row.Cells[i];
            if (text.Length == 0 || i == keyAt) continue;
            if (column is null)
            {
                bad.Add(Bad(row, "", text, "stands in a column without a name"));
                continue;
            }

            var (value, why) = cells.Read(column, sheet.Kind.Name, text);
            if (!filled.Add(column.Pointer)) bad.Add(Bad(row, column.Name, text, "names a row that another column names already: give its key or its entry id, not both"));
            else if (why is null) column.Put(record, value!);
            else bad.Add(Bad(row, column.Name, text, why));
        }

        if (bad.Count > 0) return (null, bad);
        var (command, refusals) = RecordReading.Read(sheet.Kind, record);
        return (command, [.. refusals.Select(r => Told(row, r))]);
    }

    /// <summary>A refusal of the rules, by column instead of field.</summary>
    public BadCell Told(SheetRow row, Refusal refusal)
    {
        // A list is one cell: its third word is told by the cell.
        for (var pointer = refusal.Field; pointer.Length > 0; pointer = pointer[..pointer.LastIndexOf('/')])
        {
            if (sheet.Head.Columns.Index().FirstOrDefault(c => c.Item?.Pointer == pointer) is { Item: { } column, Index: var i })
                return Bad(row, column.Name, At(row, i), refusal.Message);
        }

        var names = refusal.Field.Split('/', StringSplitOptions.RemoveEmptyEntries).Where(s => s != "entry")
            .Select(s => int.TryParse(s, out var index) ? $"{index + 1}" : Shape.NameOf(s));
        return Bad(row, string.Join('.', names), "", refusal.Message);
    }

    /// <summary>A complaint about a row.</summary>
    public BadCell Bad(SheetRow row, string column, string value, string why) => new(sheet.Name, row.Line, column, value, why);

    private JsonObject Stamp(SheetRow row)
    {
        var stamp = new JsonObject { ["id"] = entryId(sheet.Kind.Name, KeyOf(row)!) };
        if (defaults.By is { } by) stamp["by"] = by;
        if (defaults.Zone is { } zone) stamp["zone"] = zone;
        if (SameMoment.Rank(sheet.Kind.Name) is var rank and > 0) stamp["count"] = rank;
        return stamp;
    }

    private int IndexOf(string name) => sheet.Head.Columns.Index().FirstOrDefault(c => c.Item is { } column && column.IsStamp && column.Name == name, (-1, null)).Index;

    private static string At(SheetRow row, int index) => index >= 0 && index < row.Cells.Count ? row.Cells[index] : "";
}
