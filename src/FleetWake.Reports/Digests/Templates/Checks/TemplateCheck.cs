using System.Text;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetWake.Reports.Digests.Samples;

namespace FleetWake.Reports.Digests.Templates.Checks;

/// <summary>
/// Tries a digest's templates on the sample fleet and looks at what comes out as mail programs and readers would: whether
/// it fits, loads nothing, can be read in light and dark, and says everything without its pictures.
/// </summary>
public static partial class TemplateCheck
{
    /// <summary>Most bytes of the HTML part: mail programs cut a message off at about 100 KB (common practice, no source).</summary>
    public const int MostBytes = 100_000;

    private static readonly string[] Loading = ["src", "srcset", "background", "poster"];

    /// <summary>Tries every digest that has a sample.</summary>
    public static IReadOnlyList<CheckedDigest> All(DigestRenderer renderer, OperatorLayout? layout = null) => [.. SampleDigests.All.Select(d => Of(renderer, d, layout))];

    /// <summary>Tries one digest.</summary>
    public static CheckedDigest Of(DigestRenderer renderer, DigestDraft sample, OperatorLayout? layout = null)
    {
        var digest = renderer.Render(sample, layout);
        if (digest.Faults.Count > 0) return new CheckedDigest(sample.Digest, digest, digest.Faults, []);
        var files = layout is { Own.Count: > 0 } own ? TemplateFiles.Of(own.Own, "").Over(renderer.Files) : renderer.Files;
        var (html, text) = (DigestRenderer.HtmlTemplate(sample.Digest), DigestRenderer.TextTemplate(sample.Digest));
        var source = TemplateText.Of(html, files);
        var page = new HtmlParser().ParseDocument(digest.Html);
        List<TemplateFault> faults = [.. Size(html, digest), .. Loads(source, page), .. Pictures(source, page), .. Contrasts(source, page, digest.Html), .. Text(text, sample, digest), .. Gutted(html, text, sample, digest)];
        return new CheckedDigest(sample.Digest, digest, faults, [.. Unsaid(text, sample, digest)]);
    }

    private static IEnumerable<TemplateFault> Size(string file, RenderedDigest digest)
    {
        var bytes = Encoding.UTF8.GetByteCount(digest.Html);
        if (bytes > MostBytes)
            yield return new(file, null, $"the page has {bytes / 1000} KB on the sample fleet, and mail programs cut it off at {MostBytes / 1000}", "Say less for each boat, or use classes instead of styles written out.");
    }

    private static IEnumerable<TemplateFault> Loads(TemplateText source, IDocument page)
    {
        foreach (var element in page.QuerySelectorAll("script, link, iframe, object, embed, form, video, audio, base"))
            yield return At(source, $"<{element.LocalName}", $"<{element.LocalName}> has no place in a mail", "Leave it out: mail programs remove it, and some take the message for a trap.");
        foreach (var element in page.All)
        {
            foreach (var (name, value) in Loading.Select(a => (a, element.GetAttribute(a) ?? "")))
                if (value.Length > 0 && !value.StartsWith("cid:", StringComparison.Ordinal))
                    yield return At(source, value, $"{name}=\"{Short(value)}\" is loaded from elsewhere", "Only pictures of the digest itself can be shown (cid:); anything else tells a stranger who reads when.");
            if (element.GetAttribute("style") is { } style && Elsewhere().IsMatch(style))
                yield return At(source, "url(", "a style loads something from elsewhere", "Leave url( ) out.");
            if (element.Attributes.FirstOrDefault(a => a.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase)) is { } runs)
                yield return At(source, runs.Name, $"{runs.Name} runs a script", "Leave it out: mail programs remove it.");
        }
    }

    private static IEnumerable<TemplateFault> Pictures(TemplateText source, IDocument page) =>
        from image in page.QuerySelectorAll("img")
        where string.IsNullOrWhiteSpace(image.GetAttribute("alt"))
        select At(source, "<img", "a picture has no words for those who do not see it", "Give it alt=\"{{ c.alt }}\": the finding in a sentence.");

    private static IEnumerable<TemplateFault> Contrasts(TemplateText source, IDocument page, string html) =>
        from low in Contrast.Low(page, html)
        group low by (low.Dark, low.Ink, low.Ground) into pair
        let first = pair.First()
        select At(
            source,
            source.Text.Contains(first.Words, StringComparison.Ordinal) ? first.Words : first.Ink,
            $"\"{Short(first.Words)}\" is hard to read {(first.Dark ? "in the dark" : "in the light")}: {first.Ink} on {first.Ground} is {first.Ratio:0.0} to 1",
            $"{first.Needed:0.0} to 1 is needed (WCAG 2.2, 1.4.3): darken the one or lighten the other.");

    private static IEnumerable<TemplateFault> Text(string file, DigestDraft sample, RenderedDigest digest)
    {
        if (Markup().Match(digest.Text) is { Success: true } tag)
            yield return new(file, null, $"the text part holds markup ({tag.Value})", "The text part is read as it stands: write the sign itself.");
        var flat = ShownOfDigest.Flat(digest.Text);
        foreach (var picture in sample.Pictures.Where(p => !flat.Contains(ShownOfDigest.Flat(p.Statement), StringComparison.Ordinal)).Take(1))
            yield return new(file, null, $"the text part does not say what the picture \"{picture.Title}\" shows", "Write {{ c.alt }} of each of charts: whoever reads text sees no pictures.");
    }

    private static IEnumerable<TemplateFault> Gutted(string html, string text, DigestDraft sample, RenderedDigest digest)
    {
        foreach (var (file, said, isHtml) in new[] { (html, digest.Html, true), (text, digest.Text, false) })
            if (!ShownOfDigest.MoreThanHeadline(sample, said, isHtml)) yield return new(file, null, "it shows nothing of the digest but its headline", Lay);
    }

    private const string Lay = "Lay out what the digest has: docs/templates.md lists it, and the shipped file is one way.";

    // A template may leave something out on purpose; whoever wrote it is told.
    private static IEnumerable<TemplateFault> Unsaid(string file, DigestDraft sample, RenderedDigest digest)
    {
        var unsaid = ShownOfDigest.Missing(sample, digest.Text);
        if (unsaid.Count > 0)
            yield return new(file, null, $"the text part leaves out {unsaid.Count} things, the first{(unsaid[0].Title.Length == 0 ? "" : $" of \"{unsaid[0].Title}\"")}: {Short(unsaid[0].Line)}", "Lay out every list of the digest, or accept that readers of text do not learn of it.");
    }

    private static TemplateFault At(TemplateText source, string what, string why, string mend)
    {
        var index = Array.FindIndex(source.Text.Split('\n'), l => l.Contains(what, StringComparison.OrdinalIgnoreCase));
        return index < 0 ? new(source.Lines[0].File, null, why, mend) : new(source.Lines[index].File, source.Lines[index].Line, why, mend);
    }

    private static string Short(string s) => s.Length > 60 ? $"{s[..60]}..." : s;

    [GeneratedRegex(@"</?[a-z][a-z0-9]*[ />]|&(?:[a-z]+|#\d+);")]
    private static partial Regex Markup();

    [GeneratedRegex(@"url\(", RegexOptions.IgnoreCase)]
    private static partial Regex Elsewhere();
}

/// <summary>What came of trying a digest's templates.</summary>
/// <param name="Digest">The digest.</param>
/// <param name="Rendered">How it looks.</param>
/// <param name="Faults">What has to be mended; empty when all is well.</param>
/// <param name="Advice">What may be meant so.</param>
public sealed record CheckedDigest(string Digest, RenderedDigest Rendered, IReadOnlyList<TemplateFault> Faults, IReadOnlyList<TemplateFault> Advice);
