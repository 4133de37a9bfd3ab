using System.Text.RegularExpressions;
using AngleSharp.Html.Parser;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>What of a digest stands in a text that a template made: the opening words of each line are looked for.</summary>
internal static partial class ShownOfDigest
{
    /// <summary>Shorter openings stand in any text.</summary>
    private const int Telling = 3;

    /// <summary>Refuses a text in which nothing of the digest stands: an empty file is no layout, and a mail that says nothing is worse than one in the shipped layout.</summary>
    /// <param name="draft">The digest.</param>
    /// <param name="said">What the template made of it.</param>
    /// <param name="isHtml">It is a page.</param>
    /// <exception cref="TemplateRefused">It shows nothing.</exception>
    public static string OrRefused(DigestDraft draft, string said, bool isHtml) =>
        Any(Lines(draft), Flat(isHtml ? Page(said) : said)) ? said : throw new TemplateRefused("it shows nothing of the digest");

    /// <summary>Whether more of a digest than its headline stands in a text; true of one that has nothing more.</summary>
    public static bool MoreThanHeadline(DigestDraft draft, string said, bool isHtml) =>
        Any(Lines(draft).Skip(draft.Plain[0].Lines.Count > 0 && draft.Plain.Count(p => !p.Small) > 1 && draft.Plain[0].Title.Length == 0 ? draft.Plain[0].Lines.Count : 0)
            .Where(l => !draft.Subject.Contains(Opening(l.Line), StringComparison.OrdinalIgnoreCase)), Flat(isHtml ? Page(said) : said));

    private static bool Any(IEnumerable<(string Title, string Line)> lines, string flat) =>
        lines.Select(l => Opening(l.Line)).Where(o => o.Length >= Telling).ToList() is var asked && (asked.Count == 0 || asked.Any(o => flat.Contains(o, StringComparison.OrdinalIgnoreCase)));

    private static string Page(string html) => new HtmlParser().ParseDocument(html.Replace("<br>", " ", StringComparison.Ordinal)).Body!.TextContent;

    /// <summary>The lines of a digest that a text leaves out, each with its section.</summary>
    public static IReadOnlyList<(string Title, string Line)> Missing(DigestDraft draft, string said) =>
        Flat(said) is var flat ? [.. Lines(draft).Where(l => !flat.Contains(Opening(l.Line), StringComparison.OrdinalIgnoreCase))] : [];

    /// <summary>Its spaces made one.</summary>
    public static string Flat(string s) => Spaces().Replace(s, " ");

    private static IEnumerable<(string Title, string Line)> Lines(DigestDraft draft) => draft.Plain.Where(s => !s.Small).SelectMany(s => s.Lines.Select(l => (s.Title, l)));

    // What stands before the first sign: a template may part a line otherwise than the plain form does, and shapes are for the eye.
    private static string Opening(string line) => Flat(Openings().Match(line.TrimStart('▲', '▼', '●', ' ')).Value.Trim());

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^[^:;,()\n]{0,60}")]
    private static partial Regex Openings();
}
