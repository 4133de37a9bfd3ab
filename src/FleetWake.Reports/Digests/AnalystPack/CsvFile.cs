using System.Globalization;
using System.Text;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>Writes a table as CSV (RFC 4180) in UTF-8.</summary>
public static class CsvFile
{
    /// <summary>
    /// Cells that a spreadsheet would run as a formula begin with an apostrophe (OWASP, CSV injection; ASVS 5.0, V1): text
    /// that starts with one of these. Numbers are numbers, and keep their sign.
    /// </summary>
    private static readonly char[] Formula = ['=', '+', '-', '@', '\t', '\r'];

    private static readonly char[] Quoted = ['"', ',', '\r', '\n'];

    /// <summary>The file, with a header line; lines end in CR LF.</summary>
    public static byte[] Of(PackTable table)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', table.Columns.Select(c => c.Name)).Append("\r\n");
        foreach (var row in table.Rows) text.AppendJoin(',', row.Select(Cell)).Append("\r\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Cell(object? value) => value switch
    {
        null => "",
        string text => Quote(text.Length > 0 && Formula.Contains(text[0]) ? $"'{text}" : text),
        bool truth => truth ? "true" : "false",
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        double number => number.ToString("0.######", CultureInfo.InvariantCulture),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    private static string Quote(string text) => text.IndexOfAny(Quoted) < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
