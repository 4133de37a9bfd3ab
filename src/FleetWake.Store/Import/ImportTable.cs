using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>A row as it was read: the record it makes, or what is wrong with it.</summary>
/// <param name="File">Name of its table.</param>
/// <param name="Kind">The kind of record.</param>
/// <param name="Line">The line on which it begins, from 1.</param>
/// <param name="Cells">Its cells.</param>
/// <param name="Key">Its key; null when it has none.</param>
/// <param name="Command">The record; null when the row is bad.</param>
/// <param name="Bad">What is wrong with it.</param>
/// <param name="Told">A refusal of the rules, told by its column.</param>
public sealed record ReadRow(
    string File, RecordKind Kind, int Line, IReadOnlyList<string> Cells, string? Key, ICommand? Command, IReadOnlyList<BadCell> Bad, Func<Refusal, BadCell> Told);

/// <summary>A file cannot be read as a table; the message says where and how to mend it.</summary>
public sealed class TableException(string message) : Exception(message);

/// <summary>A table of records of one kind, its head read and found good; nothing of it is recorded yet.</summary>
public sealed class ImportTable
{
    private readonly Sheet sheet;
    private readonly RowDefaults defaults;
    private readonly string @operator;
    private readonly NumberMarks marks;
    private readonly HashSet<Guid> twice = [];

    private ImportTable(Sheet sheet, RowDefaults defaults, string @operator) =>
        (this.sheet, this.defaults, this.@operator, marks) = (sheet, defaults, @operator, new NumberMarks(sheet.Head.Delimiter));

    /// <summary>Name of its file.</summary>
    public string Name => sheet.Name;

    /// <summary>The kind of its records.</summary>
    public RecordKind Kind => sheet.Kind;

    /// <summary>Its columns; empty where one has no name.</summary>
    public IReadOnlyList<string> Columns => [.. sheet.Head.Columns.Select(c => c?.Name ?? "")];

    /// <summary>How many rows it has; known after <see cref="Survey"/>.</summary>
    public int Count { get; private set; }

    /// <summary>Rows without a time of day; known after <see cref="Survey"/>.</summary>
    public int DatesAlone { get; private set; }

    /// <summary>Opens a table; null when its text or its head is wrong, which is added to the complaints.</summary>
    /// <param name="name">Name of the file, for complaints.</param>
    /// <param name="open">Opens it, each time anew.</param>
    /// <param name="kind">The kind of its records.</param>
    /// <param name="defaults">What stands for cells left out.</param>
    /// <param name="operator">The operator, whose keys its rows have.</param>
    /// <param name="complaints">Takes what is wrong.</param>
    public static ImportTable? Open(string name, Func<Stream> open, RecordKind kind, RowDefaults defaults, string @operator, ICollection<string> complaints)
    {
        var wrong = new List<string>();
        var sheet = Sheet.Open(name, open, kind, defaults, wrong);
        foreach (var complaint in wrong) complaints.Add(complaint);
        return sheet is null ? null : new ImportTable(sheet, defaults, @operator);
    }

    /// <summary>
    /// Counts the rows, sees what their numbers' marks mean, and finds keys that stand twice: of two such rows nobody can
    /// say which one is meant.
    /// </summary>
    public void Survey(CancellationToken ct)
    {
        var seen = new HashSet<Guid>();
        var reader = Reader();
        foreach (var row in sheet.Rows())
        {
            ct.ThrowIfCancellationRequested();
            Count++;
            if (reader.IsDateAlone(row)) DatesAlone++;
            foreach (var number in reader.NumbersOf(row)) marks.Note(number);
            if (reader.KeyOf(row) is { } key && EntryId(Kind.Name, key) is var id && !seen.Add(id)) twice.Add(id);
        }
    }

    /// <summary>Reads every row; after <see cref="Survey"/>.</summary>
    public IEnumerable<ReadRow> Rows()
    {
        var reader = Reader();
        foreach (var row in sheet.Rows())
        {
            var key = reader.KeyOf(row);
            var doubled = key is not null && twice.Contains(EntryId(Kind.Name, key));
            var (command, bad) = doubled
                ? (null, [reader.Bad(row, SheetHead.Key, key!, "two rows of this file have this key: give each of them one of its own in the column \"key\", or take one out")])
                : reader.Read(row);
            yield return new ReadRow(Name, Kind, row.Line, row.Cells, key, command, bad, refusal => reader.Told(row, refusal));
        }
    }

    private RowReader Reader() => new(sheet, defaults, marks, EntryId);

    private Guid EntryId(string kind, string key) => RowKey.EntryId(@operator, kind, key);
}
