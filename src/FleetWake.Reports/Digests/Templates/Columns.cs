using System.Text;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>Breaks plain text at 78 columns, which every mail program and terminal shows without wrapping again.</summary>
internal static class Columns
{
    public const int Width = 78;

    /// <summary>Wraps each line at spaces, with the indent of its list item; runs of empty lines become one.</summary>
    public static string Wrap(string text)
    {
        var result = new StringBuilder();
        var empty = true;
        foreach (var raw in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = raw.TrimEnd();
            if (line.Length == 0)
            {
                if (!empty) result.Append('\n');
                empty = true;
                continue;
            }

            empty = false;
            Line(line, result);
        }

        return result.ToString().TrimEnd('\n') + "\n";
    }

    private static void Line(string line, StringBuilder result)
    {
        var indent = line.Length - line.TrimStart().Length;
        var hang = new string(' ', indent + (line.AsSpan(indent).StartsWith("- ") ? 2 : line.AsSpan(indent).StartsWith("[") ? 4 : indent > 0 ? 0 : 2));
        var current = new StringBuilder(line[..indent]);
        var started = false;
        foreach (var word in line[indent..].Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(Pieces))
        {
            if (started && current.Length + 1 + word.Length > Width)
            {
                result.Append(current).Append('\n');
                current.Clear().Append(hang);
                started = false;
            }

            if (started) current.Append(' ');
            current.Append(word);
            started = true;
        }

        result.Append(current).Append('\n');
    }

    // A word longer than the rest of a line is cut, except an address, which would not survive that.
    private static IEnumerable<string> Pieces(string word)
    {
        const int most = Width - 8;
        if (word.Length <= most || word.Contains("://", StringComparison.Ordinal)) return [word];
        return word.Chunk(most).Select(c => new string(c));
    }
}
