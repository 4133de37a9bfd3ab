using FleetWake.Commands;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Import;

namespace FleetWake.Import;

/// <summary>
/// A folder of sheets, one a kind of record. Every head is looked at before the first row is: a column that is missing is
/// told once, and nothing is recorded by halves.
/// </summary>
internal sealed class ImportFolder
{
    /// <summary>The one CSV file in a folder that is no sheet: what the import itself writes there.</summary>
    public const string ReportName = "import-report.csv";

    private ImportFolder(IReadOnlyList<ImportTable> sheets) => Sheets = sheets;

    /// <summary>Its sheets, registrations first, so that little is held.</summary>
    public IReadOnlyList<ImportTable> Sheets { get; }

    /// <summary>All rows; known after <see cref="Survey"/>.</summary>
    public int Count => Sheets.Sum(s => s.Count);

    /// <summary>Rows without a time of day; known after <see cref="Survey"/>.</summary>
    public int DatesAlone => Sheets.Sum(s => s.DatesAlone);

    /// <summary>Opens a folder; throws with everything that is wrong with its files.</summary>
    public static ImportFolder Open(ImportRequest request)
    {
        var (folder, defaults) = (request.Folder, request.Defaults);
        if (!Directory.Exists(folder)) throw new CommandException($"There is no folder \"{folder}\".");
        var complaints = new List<string>();
        var sheets = new List<ImportTable>();
        foreach (var path in Files(folder, request.Writes))
        {
            var name = Path.GetFileNameWithoutExtension(path).ToLowerInvariant();
            if (RecordKind.Find(name) is not { } kind)
            {
                complaints.Add($"{Path.GetFileName(path)}: there is no kind of record \"{name}\"; a file is named for its kind: {string.Join(", ", RecordKind.All.Select(k => k.Name))}");
                continue;
            }

            var wrong = new List<string>();
            if (ImportTable.Open(Path.GetFileName(path), () => File.OpenRead(path), kind, defaults, request.Operator, wrong) is { } sheet) sheets.Add(sheet);
            complaints.AddRange(wrong.Select(w => $"{Path.GetFileName(path)}: {w}"));
        }

        if (complaints.Count > 0)
            throw new CommandException(string.Join("\n  ", complaints.Prepend("nothing was read; these files are to be mended first:")));
        if (sheets.Count == 0)
            throw new CommandException($"There are no CSV files in \"{folder}\": \"fleetwake import {folder} --write-templates\" writes one for each kind of record, to be filled in.");
        var order = RecordKind.All.Index().ToDictionary(k => k.Item, k => k.Index);
        return new ImportFolder([.. sheets.OrderBy(s => order[s.Kind])]);
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

    /// <summary>Looks at every row of every sheet before the first is read.</summary>
    public void Survey(CancellationToken ct)
    {
        foreach (var sheet in Sheets) sheet.Survey(ct);
    }

    /// <summary>Reads every row, sheet by sheet.</summary>
    public IEnumerable<ReadRow> Rows() => Sheets.SelectMany(s => s.Rows());
}
