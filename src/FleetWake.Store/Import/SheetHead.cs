using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>What stands for cells of a stamp that a row leaves out.</summary>
/// <param name="By">Id of the person, or null.</param>
/// <param name="Zone">IANA zone, or null.</param>
public sealed record RowDefaults(string? By, string? Zone);

/// <summary>The first line of a sheet: which field each of its columns is.</summary>
/// <param name="Delimiter">What separates its columns.</param>
/// <param name="Columns">Its columns in their order; null where one has no name.</param>
internal sealed record SheetHead(char Delimiter, IReadOnlyList<Column?> Columns)
{
    public const string Key = "key";
    public const string HappenedAt = "happened_at";

    private const string StampPrefix = "entry_";

    private static readonly (string Member, int? Index) Stamp = ("entry", null);
    private static readonly char[] Delimiters = [',', ';', '\t'];

    // The stamp, as sheets write it. The entry id comes of the key, the device is the import.
    private static readonly Shape[] StampFields =
    [
        new(HappenedAt, "happenedAt", CellKind.Time, typeof(string), false, true, []),
        new("by", "by", CellKind.Text, typeof(string), false, true, []),
        new("zone", "zone", CellKind.Text, typeof(string), false, true, []),
        new("count", "count", CellKind.Whole, typeof(long), false, false, []),
        new("entered_at", "enteredAt", CellKind.Time, typeof(string), false, false, []),
        new(RowKey.AmendsMember, RowKey.AmendsMember, CellKind.EntryId, typeof(Guid), false, false, []),
    ];

    private static readonly Column KeyColumn = new(Key, [Stamp], new Shape(Key, "id", CellKind.Text, typeof(string), false, false, []), false);

    /// <summary>Every column that a sheet of a kind may have.</summary>
    public static IEnumerable<string> Known(RecordKind kind)
    {
        var fields = Shape.Of(kind.CommandType);
        return [Key, .. Shape.Columns(StampOf(fields)), .. Shape.Columns(fields)];
    }

    /// <summary>What separates the columns of a header: the one of comma, semicolon and tab that stands in it most, outside of quotation marks.</summary>
    public static char Sniff(string header)
    {
        var outside = string.Concat(header.Split('"').Where((_, i) => i % 2 == 0));
        return Delimiters.MaxBy(d => outside.Count(c => c == d));
    }

    /// <summary>Reads a header, and adds what is wrong with it.</summary>
    public static SheetHead Read(RecordKind kind, char delimiter, IReadOnlyList<string> header, RowDefaults defaults, List<string> complaints)
    {
        var fields = Shape.Of(kind.CommandType);
        var stamp = StampOf(fields);
        var columns = new List<Column?>();
        foreach (var name in header.Select(h => h.Trim()))
        {
            var column = name.Length == 0 ? null : Find(stamp, fields, name);
            if (name.Length > 0 && column is null)
                complaints.Add($"\"{name}\" is no column of {kind.Name}; its columns are {string.Join(", ", Known(kind))}");
            else if (column is not null && columns.Any(c => c?.Name == column.Name))
                complaints.Add($"the column \"{name}\" stands there twice");
            columns.Add(column);
        }

        if (complaints.Count > 0) return new SheetHead(delimiter, columns);
        var given = columns.OfType<Column>().ToList();
        foreach (var missing in Missing(stamp, [.. given.Where(c => c.IsStamp)], [Stamp]))
        {
            var (option, instead) = missing.EndsWith("by", StringComparison.Ordinal) ? ("by", defaults.By)
                : missing.EndsWith("zone", StringComparison.Ordinal) ? ("zone", defaults.Zone)
                : ("", null);
            if (instead is null) complaints.Add(NotThere(missing) + (option.Length > 0 ? $": add it, or give --{option}" : ""));
        }

        complaints.AddRange(Missing(fields, given, []).Select(NotThere));
        return new SheetHead(delimiter, columns);
    }

    private static string NotThere(string column) => $"the column \"{column}\" is missing";

    /// <summary>The stamp's fields beside those of a record: where both have one name, the stamp's is told apart.</summary>
    private static Shape[] StampOf(IReadOnlyList<Shape> fields) =>
        [.. StampFields.Select(s => fields.Any(f => f.Name == s.Name) ? s with { Name = StampPrefix + s.Name } : s)];

    private static Column? Find(IReadOnlyList<Shape> stamp, IReadOnlyList<Shape> fields, string name) =>
        name.Equals(Key, StringComparison.OrdinalIgnoreCase) ? KeyColumn
        : Column.Find(stamp, name) is { } found ? found with { Path = [Stamp] }
        : Column.Find(fields, name);

    /// <summary>Required fields without a column, within each numbered group that has one.</summary>
    private static IEnumerable<string> Missing(IReadOnlyList<Shape> fields, IReadOnlyList<Column> columns, IReadOnlyList<(string Member, int? Index)> path)
    {
        foreach (var field in fields)
        {
            var depth = path.Count;
            var within = columns.Where(c => c.Path.Take(depth).SequenceEqual(path)).ToList();
            var prefix = string.Concat(path.Where(s => s != Stamp).Select(s => Shape.NameOf(s.Member) + (s.Index is { } i ? $".{i + 1}." : ".")));
            if (field.Kind != CellKind.Group)
            {
                if (field.Required && !within.Any(c => c.Path.Count == depth && c.Field == field)) yield return prefix + field.Name;
                continue;
            }

            var groups = within.Where(c => c.Path.Count > depth && c.Path[depth].Member == field.Member).Select(c => c.Path[depth]).Distinct().ToList();
            if (groups.Count == 0 && field.Required) groups.Add((field.Member, field.List ? 0 : null));
            foreach (var missing in groups.SelectMany(g => Missing(field.Fields, columns, [.. path, g]))) yield return missing;
        }
    }
}
