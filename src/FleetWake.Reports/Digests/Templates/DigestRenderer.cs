using System.Text.Encodings.Web;
using FleetWake.Reports.Pictures;
using Fluid;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>
/// Lays a digest out by the operator's Liquid templates, or, when one of them fails, in a plain form made in code:
/// a broken template must not keep a manager from reading that a boat is not for hire.
/// </summary>
public sealed class DigestRenderer
{
    private readonly string folder;
    private readonly Func<DraftPicture, byte[]> draw;

    /// <summary>A renderer.</summary>
    /// <param name="pictures">Draws the charts.</param>
    /// <param name="templateFolder">Folder of the templates; <c>reports-templates</c> beside the program when null.</param>
    public DigestRenderer(PngRenderer pictures, string? templateFolder = null)
        : this(p => p.Draw(pictures), templateFolder)
    {
    }

    internal DigestRenderer(Func<DraftPicture, byte[]> draw, string? templateFolder)
    {
        this.draw = draw;
        folder = templateFolder ?? Path.Combine(AppContext.BaseDirectory, "reports-templates");
    }

    /// <summary>Name of a digest's HTML template.</summary>
    public static string HtmlTemplate(string digest) => $"{digest}.html.liquid";

    /// <summary>Name of a digest's text template.</summary>
    public static string TextTemplate(string digest) => $"{digest}.txt.liquid";

    /// <summary>Renders the digest. The templates are read each time: an edit holds from the next digest on.</summary>
    public RenderedDigest Render(DigestDraft draft)
    {
        var (charts, pictures) = DrawnChart.Draw(draft.Pictures, draw);
        var model = new DigestModel(draft, charts);
        var (forHtml, forText) = (HtmlTemplate(draft.Digest), TextTemplate(draft.Digest));
        var (html, whyHtml) = Try(forHtml, () => HtmlFinish.Of(Guarded.Render(Read(forHtml), model, HtmlEncoder.Default)));
        var (text, whyText) = Try(forText, () => Columns.Wrap(Guarded.Render(Read(forText), model, NullEncoder.Default)));
        var why = whyHtml is not null && whyText is not null ? $"{whyHtml}; {whyText}" : whyHtml ?? whyText;
        html ??= PlainForm.Html(draft, charts, whyHtml!);
        text ??= Columns.Wrap(PlainForm.Text(draft, whyText!));

        // A template may leave a chart out; an image that nothing refers to would hang on the mail as an attachment.
        var shown = pictures.Where(p => html.Contains($"cid:{p.ContentId}", StringComparison.Ordinal)).ToList();
        return new RenderedDigest(draft.Subject, html, text, shown, why is not null, why) { Attachments = draft.Attachments };
    }

    private string Read(string name)
    {
        var file = Path.Combine(folder, name);
        return File.Exists(file) ? File.ReadAllText(file) : throw new TemplateRefused("the file is missing");
    }

    private static (string? Rendered, string? Why) Try(string name, Func<string> render)
    {
        try
        {
            return (render(), null);
        }
#pragma warning disable CA1031 // An operator's template can fail in any way; each of them ends in the plain form.
        catch (Exception e)
#pragma warning restore CA1031
        {
            // A library's message may span lines; a path in it is nobody's business in a mail.
            var line = e is IOException or UnauthorizedAccessException ? "the file cannot be read" : e.Message.Split('\n', 2)[0].Trim();
            return (null, $"{name}: {Phrases.Plain(line.Length > 160 ? line[..160] : line)}");
        }
    }
}
