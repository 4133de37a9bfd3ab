using System.Text.Encodings.Web;
using FleetWake.Reports.Pictures;
using Fluid;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>
/// Lays a digest out by Liquid templates: the operator's own, else the folder's; when one of them fails, by the last that
/// served, else by the shipped one, and at last in a plain form made in code. A broken template must not keep a manager
/// from reading that a boat is not for hire, and the message's end says what happened.
/// </summary>
public sealed class DigestRenderer
{
    private const string PlainName = "a plain form";

    private readonly TemplateFiles folder;
    private readonly TemplateFiles shipped;
    private readonly Func<DraftPicture, byte[]> draw;

    /// <summary>A renderer.</summary>
    /// <param name="pictures">Draws the charts.</param>
    /// <param name="templateFolder">Folder of the templates; <c>reports-templates</c> beside the program when null.</param>
    public DigestRenderer(PngRenderer pictures, string? templateFolder = null)
        : this(p => p.Draw(pictures), templateFolder is null ? TemplateFiles.Shipped : TemplateFiles.Folder(templateFolder), TemplateFiles.Shipped)
    {
    }

    internal DigestRenderer(Func<DraftPicture, byte[]> draw, TemplateFiles folder, TemplateFiles shipped) =>
        (this.draw, this.folder, this.shipped) = (draw, folder.Over(shipped), shipped);

    /// <summary>Name of a digest's HTML template.</summary>
    public static string HtmlTemplate(string digest) => $"{digest}.html.liquid";

    /// <summary>Name of a digest's text template.</summary>
    public static string TextTemplate(string digest) => $"{digest}.txt.liquid";

    /// <summary>The folder's files, over the shipped ones.</summary>
    public TemplateFiles Files => folder;

    /// <summary>Renders the digest. The templates are read each time: an edit holds from the next digest on.</summary>
    /// <param name="draft">The digest.</param>
    /// <param name="layout">How the operator has it laid out; by the folder when left out.</param>
    public RenderedDigest Render(DigestDraft draft, OperatorLayout? layout = null)
    {
        var (charts, pictures) = DrawnChart.Draw(draft.Pictures, draw);
        var model = new DigestModel(draft, charts);
        var files = (layout ?? OperatorLayout.None) is { Own.Count: > 0 } own ? TemplateFiles.Of(own.Own, "your own layout").Over(folder) : folder;
        var html = Lay(HtmlTemplate(draft.Digest), files, layout, model, t => ShownOfDigest.OrRefused(draft, HtmlFinish.Of(Guarded.Render(t.Text, model, HtmlEncoder.Default)), isHtml: true), why => PlainForm.Html(draft, charts, why));
        var text = Lay(TextTemplate(draft.Digest), files, layout, model, t => ShownOfDigest.OrRefused(draft, Columns.Wrap(Guarded.Render(t.Text, model, NullEncoder.Default)), isHtml: false), why => Columns.Wrap(PlainForm.Text(draft, why)));
        List<TemplateFault> faults = [.. new[] { html.Fault, text.Fault }.OfType<TemplateFault>()];

        // A template may leave a chart out; an image that nothing refers to would hang on the mail as an attachment.
        var shown = pictures.Where(p => html.Said.Contains($"cid:{p.ContentId}", StringComparison.Ordinal)).ToList();
        return new RenderedDigest(
            draft.Subject,
            html.Fault is { } h && html.StoodIn != PlainName ? LayoutNotice.InHtml(html.Said, LayoutNotice.Of(h, html.StoodIn)) : html.Said,
            text.Fault is { } t && text.StoodIn != PlainName ? LayoutNotice.InText(text.Said, Columns.Wrap(LayoutNotice.Of(t, text.StoodIn))) : text.Said,
            shown,
            faults.Count > 0,
            faults.Count > 0 ? string.Join("; ", faults) : null)
        {
            Attachments = draft.Attachments,
            Faults = faults,
            Served = new[] { html.Served, text.Served }.OfType<KeyValuePair<string, string>>().ToDictionary(),
        };
    }

    private Laid Lay(string name, TemplateFiles files, OperatorLayout? layout, DigestModel model, Func<TemplateText, string> render, Func<string, string> plain)
    {
        var members = TemplateMembers.Names(model);
        var (said, text, fault) = Try(name, () => TemplateText.Of(name, files), render, members);
        if (said is not null) return new(said, null, files.Origin, text!.Text == Whole(name, shipped) ? null : new(name, text.Text));
        if (layout?.LastGood.GetValueOrDefault(name) is { } kept && Try(name, () => TemplateText.Whole(name, kept), render, members).Said is { } again)
            return new(again, fault, "the last layout that served", null);
        return Try(name, () => TemplateText.Of(name, shipped), render, members).Said is { } plainer ? new(plainer, fault, shipped.Origin, null) : new(plain($"{fault}"), fault, PlainName, null);
    }

    // What is kept as the last that served is only what differs from what everybody has anyway.
    private static string? Whole(string name, TemplateFiles files)
    {
        try
        {
            return TemplateText.Of(name, files).Text;
        }
        catch (Exception e) when (e is TemplateRefused or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static (string? Said, TemplateText? Text, TemplateFault? Fault) Try(string name, Func<TemplateText> read, Func<TemplateText, string> render, IReadOnlyCollection<string> members)
    {
        TemplateText? text = null;
        try
        {
            text = read();
            return (render(text), text, null);
        }
#pragma warning disable CA1031 // An operator's template can fail in any way; each of them ends in another layout.
        catch (Exception e)
#pragma warning restore CA1031
        {
            return (null, text, TemplateFault.Of(e, name, text, members));
        }
    }

    private sealed record Laid(string Said, TemplateFault? Fault, string StoodIn, KeyValuePair<string, string>? Served);
}
