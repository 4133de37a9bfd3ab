namespace FleetWake.Figures;

/// <summary>A table in letters of one width: the first column to the left, numbers to the right.</summary>
internal static class TextTable
{
    /// <summary>The lines of a table.</summary>
    /// <param name="rows">Rows of one length, the head first.</param>
    public static IEnumerable<string> Of(IReadOnlyList<string[]> rows)
    {
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length))];
        return rows.Select(row => "  " + string.Join("  ", row.Select((cell, column) => column == 0 ? cell.PadRight(widths[0]) : cell.PadLeft(widths[column]))));
    }
}
