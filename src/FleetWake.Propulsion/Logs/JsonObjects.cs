using System.Text;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Parts a text into its JSON objects, however they are laid out: one a line, over several lines, one after another, or in
/// an array. An object that never ends costs itself only: the next line that begins a message starts anew.
/// </summary>
internal static class JsonObjects
{
    /// <summary>Longest object kept [characters].</summary>
    internal const int Longest = 1 << 20;

    internal static IEnumerable<(int Line, string Text, string? Broken)> Of(IEnumerable<NumberedLine> lines)
    {
        var open = new StringBuilder();
        var (depth, began) = (0, 0);
        var (inText, escaped) = (false, false);
        foreach (var (number, line) in lines)
        {
            if (line is null)
            {
                yield return (number, "", $"longer than {BoundedLines.Longest} characters");
                continue;
            }

            if (depth > 0 && BeginsMessage(line))
            {
                yield return (began, "", "a JSON object without its end");
                open.Clear();
                (depth, inText, escaped) = (0, false, false);
            }

            var waste = false;
            foreach (var c in line)
            {
                if (depth == 0)
                {
                    if (c == '{')
                    {
                        (depth, began) = (1, number);
                        open.Append(c);
                    }
                    else if (!char.IsWhiteSpace(c) && c is not ('[' or ']' or ','))
                    {
                        waste = true;
                    }

                    continue;
                }

                open.Append(c);
                if (inText)
                {
                    if (escaped) escaped = false;
                    else if (c == '\\') escaped = true;
                    else if (c == '"') inText = false;
                }
                else if (c == '"')
                {
                    inText = true;
                }
                else if (c is '{' or '}')
                {
                    depth += c == '{' ? 1 : -1;
                    if (depth > 0) continue;
                    yield return (began, open.ToString(), null);
                    open.Clear();
                }
            }

            if (waste) yield return (number, "", "text outside of a JSON object");
            if (depth == 0) continue;
            inText = false; // no text of JSON runs over a line's end
            open.Append('\n');
            if (open.Length <= Longest) continue;
            yield return (began, "", $"a JSON object longer than {Longest} characters");
            open.Clear();
            (depth, escaped) = (0, false);
        }

        if (depth > 0) yield return (began, "", "a JSON object without its end");
    }

    private static bool BeginsMessage(string line) =>
        line.StartsWith('{') && line.Contains("\"updates\"", StringComparison.Ordinal);
}
