using System.Globalization;
using System.Text.RegularExpressions;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>Why a template cannot be used, and how to mend it.</summary>
/// <param name="File">The file.</param>
/// <param name="Line">Its line; null when none can be named.</param>
/// <param name="Why">What is wrong.</param>
/// <param name="Mend">What to do; empty when nothing can be said.</param>
public sealed partial record TemplateFault(string File, int? Line, string Why, string Mend)
{
    /// <summary>In one line.</summary>
    public override string ToString() => $"{File}{(Line is { } line ? $", line {line}" : "")}: {Why}";

    /// <summary>The fault that an exception tells of.</summary>
    /// <param name="e">Whatever went wrong.</param>
    /// <param name="file">The template.</param>
    /// <param name="text">Its text with what was put in; null when it did not come so far.</param>
    /// <param name="members">What the template could have named.</param>
    internal static TemplateFault Of(Exception e, string file, TemplateText? text, IReadOnlyCollection<string> members)
    {
        if (e is TemplateRefused { File: { } known } refused) return new(known, refused.Line, Plain(e.Message), Mending(e.Message, members));

        // A library's message may span lines; a path in it is nobody's business in a mail.
        var why = e is IOException or UnauthorizedAccessException ? "the file cannot be read" : Plain(e.Message.Split('\n', 2)[0].Trim());
        var (at, line) = Place(why, file, text);
        return new(at, line, Position().Replace(why, "").Trim(), Mending(why, members));
    }

    private static (string File, int? Line) Place(string why, string file, TemplateText? text)
    {
        if (text is null) return (file, null);
        if (Position().Match(why) is { Success: true } told && int.Parse(told.Groups["line"].Value, CultureInfo.InvariantCulture) is var line && line >= 1 && line <= text.Lines.Count)
            return text.Lines[line - 1];

        // What fails while it is laid out has no line of its own: the first that names the thing is where to look.
        if (Named(why) is not { } name) return (file, null);
        var lines = text.Text.Split('\n');
        var index = Array.FindIndex(lines, l => Regex.IsMatch(l, $@"\{{[{{%][^}}]*(?<![\w]){Regex.Escape(name)}(?![\w])"));
        return index < 0 ? (file, null) : text.Lines[index];
    }

    private static string Mending(string why, IReadOnlyCollection<string> members)
    {
        if (why.Contains("is missing", StringComparison.Ordinal)) return "Put the file there; without one of your own the shipped one is used.";
        if (why.Contains("the filter", StringComparison.Ordinal)) return $"Filters that serve: {string.Join(", ", Guarded.Filters.Order(StringComparer.Ordinal))}.";
        if (why.Contains("Unknown tag", StringComparison.OrdinalIgnoreCase)) return $"Tags that serve: {string.Join(", ", Guarded.Tags.Where(t => t != "#"))}, and partial 'name', styles.";
        if (why.Contains("was expected", StringComparison.Ordinal)) return "Something that was opened is not closed: each if, for, unless and case has its end.";
        if (why.Contains("Undefined", StringComparison.OrdinalIgnoreCase) && Named(why) is { } name)
        {
            var near = members.OrderBy(m => Distance(m, name)).ThenBy(m => m, StringComparer.Ordinal).FirstOrDefault();
            return near is not null && Distance(near, name) <= Math.Max(2, name.Length / 3) ? $"Perhaps {near} is meant; docs/templates.md lists what each digest has." : "docs/templates.md lists what each digest has.";
        }

        if (why.Contains("shows nothing", StringComparison.Ordinal)) return "Lay out what the digest has: docs/templates.md lists it, and the shipped file is one way.";
        return why.Contains("range", StringComparison.Ordinal) ? $"A range has two numbers written out, at most {TemplateLint.LongestRange} apart." : "";
    }

    private static string? Named(string why) => Quoted().Match(why) is { Success: true } m ? m.Groups["name"].Value.Split('.')[^1] : null;

    private static string Plain(string line) => Phrases.Plain(line.Length > 160 ? line[..160] : line);

    // Levenshtein's distance between two words, from memory.
    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var corner = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                (corner, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, corner + (a[i - 1] == b[j - 1] ? 0 : 1)));
        }

        return row[^1];
    }

    [GeneratedRegex(@"\s*at \((?<line>\d+):\d+\)")]
    private static partial Regex Position();

    [GeneratedRegex(@"[Uu]ndefined[^']*'(?<name>[\w.]+)'")]
    private static partial Regex Quoted();
}

/// <summary>A template that is not rendered, with the reason.</summary>
internal sealed class TemplateRefused(string why) : Exception(why)
{
    /// <summary>The file, when it is known here; else that of the template.</summary>
    public string? File { get; init; }

    /// <summary>Its line, when it is known here.</summary>
    public int? Line { get; init; }
}
