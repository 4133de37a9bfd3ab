using System.Text.Encodings.Web;
using FleetWake.Reports.Pictures;
using Fluid;

namespace FleetWake.Reports.Digests;

/// <summary>
/// Lays a digest out by the operator's Liquid templates, or, when one of them fails, in a plain form made in code:
/// a broken template must not keep a manager from reading that a boat is not for hire.
/// </summary>
public sealed class DigestRenderer
{
    /// <summary>Name of the HTML template.</summary>
    public const string HtmlTemplate = "weekly-wear.html.liquid";

    /// <summary>Name of the text template.</summary>
    public const string TextTemplate = "weekly-wear.txt.liquid";

    private readonly string folder;
    private readonly Func<DriftPicture, byte[]> draw;
    private readonly Func<CusumPicture, byte[]> drawSums;

    /// <summary>A renderer.</summary>
    /// <param name="pictures">Draws the charts.</param>
    /// <param name="templateFolder">Folder of the templates; <c>reports-templates</c> beside the program when null.</param>
    public DigestRenderer(PngRenderer pictures, string? templateFolder = null)
        : this(pictures.Render, pictures.Render, templateFolder)
    {
    }

    internal DigestRenderer(Func<DriftPicture, byte[]> draw, Func<CusumPicture, byte[]> drawSums, string? templateFolder)
    {
        (this.draw, this.drawSums) = (draw, drawSums);
        folder = templateFolder ?? Path.Combine(AppContext.BaseDirectory, "reports-templates");
    }

    /// <summary>Renders the digest. The templates are read each time: an edit holds from the next digest on.</summary>
    public RenderedDigest Render(WeeklyWearContent content)
    {
        var (charts, pictures) = DrawnChart.Draw(Pictures(content));
        var model = new DigestModel(content, charts);
        var (html, whyHtml) = Try(HtmlTemplate, () => HtmlFinish.Of(Guarded.Render(Read(HtmlTemplate), model, HtmlEncoder.Default)));
        var (text, whyText) = Try(TextTemplate, () => Columns.Wrap(Guarded.Render(Read(TextTemplate), model, NullEncoder.Default)));
        var why = whyHtml is not null && whyText is not null ? $"{whyHtml}; {whyText}" : whyHtml ?? whyText;
        html ??= PlainForm.Html(content, charts, whyHtml!);
        text ??= Columns.Wrap(PlainForm.Text(content, whyText!));

        // A template may leave a chart out; an image that nothing refers to would hang on the mail as an attachment.
        var shown = pictures.Where(p => html.Contains($"cid:{p.ContentId}", StringComparison.Ordinal)).ToList();
        return new RenderedDigest(content.Subject, html, text, shown, why is not null, why);
    }

    /// <summary>Each chart, with the sums of the same position behind it.</summary>
    private IEnumerable<(string Title, string Statement, Func<byte[]> Draw)> Pictures(WeeklyWearContent content)
    {
        foreach (var chart in content.Charts)
        {
            yield return (chart.Title, chart.Statement, () => draw(chart));
            foreach (var sums in content.Sums.Where(s => s.Boat == chart.Boat && s.Position == chart.Position))
                yield return ($"{sums.Title}, trial by trial", sums.Statement, () => drawSums(sums));
        }
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
