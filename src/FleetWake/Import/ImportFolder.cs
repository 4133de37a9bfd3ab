using FleetWake.Commands;
using FleetWake.Logbook.Entries;

namespace FleetWake.Import;

/// <summary>A row as it was read: the record it makes, or what is wrong with it.</summary>
/// <param name="Sheet">Its sheet.</param>
/// <param name="Row">The row.</param>
/// <param name="Reader">Tells refusals by column.</param>
/// <param name="Key">Its key; null when it has none.</param>
/// <param name="Command">The record; null when the row is bad.</param>
/// <param name="Bad">What is wrong with it.</param>
internal sealed record ReadRow(Sheet Sheet, SheetRow Row, RowReader Reader, string? Key, ICommand? Command, IReadOnlyList<BadCell> Bad);

/// <summary>
/// A folder of sheets, one a kind of record. Every head is looked at before the first row is: a column that is missing is
/// told once, and nothing is recorded by halves.
/// </summary>
internal sealed class ImportFolder
{
    /// <summary>The one CSV file in a folder that is no sheet: what the import itself writes there.</summary>
    public const string ReportName = "import-report.csv";

    private readonly RowDefaults defaults;
    private readonly string @operator;
    private readonly Dictionary<Sheet, HashSet<Guid>> twice = [];
    private readonly Dictionary<Sheet, NumberMarks> marks = [];

    private ImportFolder(IReadOnlyList<Sheet> sheets, RowDefaults defaults, string @operator) =>
        (Sheets, this.defaults, this.@operator) = (sheets, defaults, @operator);

    /// <summary>Its sheets, registrations first, so that little is held.</summary>
    public IReadOnlyList<Sheet> Sheets { get; }

    /// <summary>Rows of each sheet; known after <see cref="Survey"/>.</summary>
    public Dictionary<Sheet, int> Counts { get; } = [];

    /// <summary>Rows without a time of day; known after <see cref="Survey"/>.</summary>
    public int DatesAlone { get; private set; }

    /// <summary>Opens a folder; throws with everything that is wrong with its files.</summary>
    public static ImportFolder Open(ImportRequest request)
    {
        var (folder, defaults) = (request.Folder, request.Defaults);
        if (!Directory.Exists(folder)) throw new CommandException($"There is no folder \"{folder}\".");
        var complaints = new List<string>();
        var sheets = new List<Sheet>();
        foreach (var path in Files(folder, request.Writes))
        {
            var name = Path.GetFileNameWithoutExtension(path).ToLowerInvariant();
            if (RecordKind.Find(name) is not { } kind)
            {
                complaints.Add($"{Path.GetFileName(path)}: there is no kind of record \"{name}\"; a file is named for its kind: {string.Join(", ", RecordKind.All.Select(k => k.Name))}");
                continue;
            }

            var wrong = new List<string>();
            if (Sheet.Open(path, kind, defaults, wrong) is { } sheet) sheets.Add(sheet);
            complaints.AddRange(wrong.Select(w => $"{Path.GetFileName(path)}: {w}"));
        }

        if (complaints.Count > 0)
            throw new CommandException(string.Join("\n  ", complaints.Prepend("nothing was read; these files are to be mended first:")));
        if (sheets.Count == 0)
            throw new CommandException($"There are no CSV files in \"{folder}\": \"fleetwake import {folder} --write-templates\" writes one for each kind of record, to be filled in.");
        var order = RecordKind.All.Index().ToDictionary(k => k.Item, k => k.Index);
        return new ImportFolder([.. sheets.OrderBy(s => order[s.Kind])], defaults, request.Operator);
    }

    /// <summary>The CSV files of a folder, by name, without what the program itself writes there.</summary>
    private static IReadOnlyList<string> Files(string folder, IReadOnlyList<string> writes) =>
    [
        .. Directory.EnumerateFiles(folder)
            .Where(f => IsCsv(f) && Path.GetFileName(f) != ReportName && !writes.Contains(Path.GetFullPath(f), StringComparer.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    private static bool IsCsv(string path) => Path.GetExtension(path).Equals(".csv", StringComparison.OrdinalIgnoreCase);

    /// <summary>A file to be written, as a full path; throws when it is named as a sheet is, for it would be written over.</summary>
    public static string NoSheet(string path, string option) =>
        IsCsv(path) && RecordKind.Find(Path.GetFileNameWithoutExtension(path).ToLowerInvariant()) is { } kind
            ? throw new CommandException($"{option} {path}: a file of that name is a sheet of {kind.Name} and would be written over; give it another name.")
            : Path.GetFullPath(path);

    /// <summary>
    /// Counts the rows, sees what their numbers' marks mean, and finds keys that stand twice in a sheet: of two such rows
    /// nobody can say which one is meant.
    /// </summary>
    public void Survey(CancellationToken ct)
    {
        foreach (var sheet in Sheets)
        {
            var (seen, doubled, rows) = (new HashSet<Guid>(), new HashSet<Guid>(), 0);
            var reader = new RowReader(sheet, defaults, marks[sheet] = new NumberMarks(sheet.Head.Delimiter), EntryId);
            foreach (var row in sheet.Rows())
            {
                ct.ThrowIfCancellationRequested();
                rows++;
                if (reader.IsDateAlone(row)) DatesAlone++;
                foreach (var number in reader.NumbersOf(row)) marks[sheet].Note(number);
                if (reader.KeyOf(row) is { } key && !seen.Add(EntryId(sheet.Kind.Name, key))) doubled.Add(EntryId(sheet.Kind.Name, key));
            }

            (Counts[sheet], twice[sheet]) = (rows, doubled);
        }
    }

    /// <summary>Reads every row, sheet by sheet.</summary>
    public IEnumerable<ReadRow> Rows() => Sheets.SelectMany(Rows);

    private IEnumerable<ReadRow> Rows(Sheet sheet)
    {
        var reader = new RowReader(sheet, defaults, marks[sheet], EntryId);
        foreach (var row in sheet.Rows())
        {
            var key = reader.KeyOf(row);
            if (key is not null && twice[sheet].Contains(EntryId(sheet.Kind.Name, key)))
            {
                yield return new ReadRow(sheet, row, reader, key, null, [reader.Bad(row, SheetHead.Key, key, "two rows of this file have this key: give each of them one of its own in the column \"key\", or take one out")]);
                continue;
            }

            var (command, bad) = reader.Read(row);
            yield return new ReadRow(sheet, row, reader, key, command, bad);
        }
    }

    private Guid EntryId(string kind, string key) => RowKey.EntryId(@operator, kind, key);
}
