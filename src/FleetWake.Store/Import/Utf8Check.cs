using System.Text.Unicode;

namespace FleetWake.Store.Import;

/// <summary>Finds text that is not UTF-8, and the line it stands on.</summary>
internal static class Utf8Check
{
    private const int Block = 1 << 16;

    // Longer than any row of any kind: beyond it, the file is no text, or a quotation mark was never closed.
    private const int LongestLine = 1 << 20;

    /// <summary>What is wrong with a file's text; null when nothing is.</summary>
    public static string? Complaint(Func<Stream> open)
    {
        using var file = open();
        var buffer = new byte[Block];
        var (held, line) = (0, 1);
        while (true)
        {
            var read = file.Read(buffer, held, buffer.Length - held);
            var text = buffer.AsSpan(0, held + read);
            if (line == 1 && text.StartsWith("PK\u0003\u0004"u8)) return "is a spreadsheet's own file, or another packed one: save it as \"CSV UTF-8\"";
            if (line == 1 && IsWide(text)) return "is UTF-16, as \"Unicode text\" is saved: save it as \"CSV UTF-8\"";

            // Whole lines only: a letter of several bytes never holds the byte of a line's end.
            var whole = read == 0 ? text.Length : text.LastIndexOf((byte)'\n') + 1;
            if (!Utf8.IsValid(text[..whole])) return $"line {line + BadLine(text[..whole])} holds letters that are not UTF-8: save the file as \"CSV UTF-8\"";
            if (read == 0) return null;
            line += text[..whole].Count((byte)'\n');
            held = text.Length - whole;
            text[whole..].CopyTo(buffer);
            if (held > LongestLine) return $"line {line} is longer than any record: is this a CSV file?";
            if (held == buffer.Length) Array.Resize(ref buffer, buffer.Length * 2);
        }
    }

    private static bool IsWide(ReadOnlySpan<byte> text) => text is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] || text[..Math.Min(text.Length, 256)].Contains((byte)0);

    private static int BadLine(ReadOnlySpan<byte> lines)
    {
        var before = 0;
        while (lines.IndexOf((byte)'\n') is var end and >= 0 && Utf8.IsValid(lines[..end]))
        {
            before++;
            lines = lines[(end + 1)..];
        }

        return before;
    }
}
