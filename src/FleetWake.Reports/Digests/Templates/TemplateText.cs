using System.Text;
using System.Text.RegularExpressions;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>
/// A template with its partials and styles put in. That is done on the text, before it is parsed: the lint then sees
/// every tag, and a partial can reach nothing that its template cannot.
/// </summary>
/// <param name="Text">The text.</param>
/// <param name="Lines">Of each of its lines, the file and the line that it comes from.</param>
internal sealed partial record TemplateText(string Text, IReadOnlyList<(string File, int Line)> Lines)
{
    /// <summary>The style sheet that <c>{% styles %}</c> puts in.</summary>
    public const string Styles = "style.css";

    /// <summary>How deep partials may stand in each other.</summary>
    public const int Deepest = 4;

    /// <summary>Most partials that are put in: an empty one writes nothing and still takes its time.</summary>
    public const int MostPartials = 200;

    /// <summary>Most characters of a template with all that was put in.</summary>
    public const int MostCharacters = 400_000;

    /// <summary>Reads a template and puts in what it asks for.</summary>
    public static TemplateText Of(string file, TemplateFiles files)
    {
        var made = new Making(files, file.EndsWith(".txt.liquid", StringComparison.Ordinal) ? ".txt.liquid" : ".html.liquid");
        made.Put(file, files.Read(file) ?? throw new TemplateRefused("the file is missing"), 0);
        return made.Done();
    }

    /// <summary>A text that was put together before.</summary>
    public static TemplateText Whole(string file, string text) => new(text, [.. text.Split('\n').Select((_, i) => (file, i + 1))]);

    [GeneratedRegex(@"\{%-?\s*(?:partial\s+(?<quote>['""])(?<name>[a-z0-9-]{1,40})\k<quote>|(?<styles>styles))\s*-?%\}")]
    private static partial Regex Asked();

    private sealed class Making(TemplateFiles files, string form)
    {
        private readonly StringBuilder text = new();
        private readonly List<(string File, int Line)> lines = [];
        private int partials;

        public void Put(string file, string source, int depth)
        {
            if (depth > Deepest) throw new TemplateRefused($"partials stand in each other more than {Deepest} deep") { File = file };
            var line = 1;
            var at = 0;
            foreach (var match in Asked().Matches(source).Cast<Match>())
            {
                Emit(file, source[at..match.Index], ref line);
                Ask(file, line, match, depth);
                at = match.Index + match.Length;
            }

            Emit(file, source[at..], ref line);
        }

        public TemplateText Done() => new(text.ToString(), lines);

        private void Ask(string file, int line, Match match, int depth)
        {
            if (match.Groups["styles"].Success)
            {
                var css = files.Read(Styles) ?? throw new TemplateRefused($"the file {Styles} is missing") { File = file, Line = line };
                if (StyleLint.Of(css) is { } wrong) throw new TemplateRefused(wrong.Why) { File = Styles, Line = wrong.Line };
                css = StyleLint.WithoutComments(css);
                var from = 1;
                Emit(Styles, $"<style>\n{css}\n</style>", ref from);
                return;
            }

            if (++partials > MostPartials) throw new TemplateRefused($"it puts in more than {MostPartials} partials") { File = file, Line = line };
            var name = $"_{match.Groups["name"].Value}{form}";
            Put(name, files.Read(name) ?? throw new TemplateRefused($"the partial {name} is missing") { File = file, Line = line }, depth + 1);
        }

        private void Emit(string file, string piece, ref int line)
        {
            if (text.Length + piece.Length > MostCharacters) throw new TemplateRefused($"with its partials it is longer than {MostCharacters} characters") { File = file, Line = line };
            if (lines.Count == 0) lines.Add((file, line));
            foreach (var c in piece)
            {
                if (c != '\n') continue;
                line++;
                lines.Add((file, line));
            }

            text.Append(piece);
        }
    }
}

/// <summary>What a style sheet must not hold: nothing may be loaded from elsewhere, and none of it is Liquid.</summary>
internal static partial class StyleLint
{
    private static readonly string[] Never = ["@import", "url(", "expression(", "</style", "{{", "{%", "<!--"];

    /// <summary>What is wrong, with its line; null when nothing is.</summary>
    public static (string Why, int Line)? Of(string css)
    {
        var lines = css.Split('\n');
        for (var i = 0; i < lines.Length; i++)
            foreach (var no in Never)
                if (lines[i].Contains(no, StringComparison.OrdinalIgnoreCase)) return ($"a style sheet must not hold {no}", i + 1);
        return Unclosed(WithoutComments(css));
    }

    /// <summary>The same without its comments, line by line: of a rule that a comment names a mail program, and what puts styles on elements, makes a rule.</summary>
    public static string WithoutComments(string css) => Comments().Replace(css, c => new string('\n', c.Value.Count(x => x == '\n')));

    /// <summary>A brace too many or too few swallows every rule behind it.</summary>
    private static (string Why, int Line)? Unclosed(string css)
    {
        var open = new Stack<int>();
        var line = 1;
        foreach (var c in css)
        {
            if (c == '\n') line++;
            if (c == '{') open.Push(line);
            if (c == '}' && !open.TryPop(out _)) return ("a brace is closed that was not opened", line);
        }

        if (css.Contains("/*", StringComparison.Ordinal)) return ("a comment is not closed", css[..css.IndexOf("/*", StringComparison.Ordinal)].Count(x => x == '\n') + 1);
        return open.TryPop(out var from) ? ("a brace is not closed", from) : null;
    }

    [GeneratedRegex(@"/\*.*?\*/", RegexOptions.Singleline)]
    private static partial Regex Comments();
}
