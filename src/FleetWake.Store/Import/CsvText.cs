using System.Buffers;

namespace FleetWake.Store.Import;

/// <summary>Writes cells as spreadsheets read them.</summary>
public static class CsvText
{
    private static readonly SearchValues<char> Special = SearchValues.Create(",;\"\t\r\n");

    /// <summary>One line of cells.</summary>
    public static string Line(IEnumerable<string> cells) => string.Join(',', cells.Select(Cell));

    /// <summary>A text that a person or a file gave: one that a spreadsheet would run as a formula is made plain text.</summary>
    public static string Harmless(string text) => text is ['=' or '+' or '-' or '@' or '\t' or '\r', ..] ? "'" + text : text;

    private static string Cell(string text) =>
        text.AsSpan().IndexOfAny(Special) < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
