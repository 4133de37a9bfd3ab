using System.Text.RegularExpressions;

namespace FleetWake.Propulsion.Tests;

/// <summary>As <see cref="ReferenceTable"/>, for tables in which a cell in quotes may hold commas.</summary>
internal static partial class QuotedTable
{
    internal static IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", file))
            .Skip(1)
            .Where(line => line.Length > 0)
            .Select(line => CellPattern().Matches(line).Select(cell => cell.Value.Trim('"')).ToArray());

    [GeneratedRegex("(?<=^|,)(\"[^\"]*\"|[^,]*)")]
    private static partial Regex CellPattern();
}
