using System.Text.Encodings.Web;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>Says at a message's end that its layout is not the one that was meant. Set here: the template that failed cannot say so.</summary>
internal static class LayoutNotice
{
    public static string Of(TemplateFault fault, string stoodIn) =>
        $"Layout: {fault}. This message uses {stoodIn} instead; nothing is left out. \"fleetwake templates check\" or the office's Templates page says more.";

    public static string InHtml(string html, string notice)
    {
        var line = $"<p style=\"margin:16px;font:13px/1.4 sans-serif;color:#666f78\">{HtmlEncoder.Default.Encode(notice)}</p>";
        var end = html.LastIndexOf("</body>", StringComparison.OrdinalIgnoreCase);
        return end < 0 ? html + line : html.Insert(end, line);
    }

    public static string InText(string text, string notice) => $"{text.TrimEnd('\n')}\n\n{notice}\n";
}
