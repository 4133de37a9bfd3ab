using System.Text;
using System.Text.Encodings.Web;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>A digest without a template: bare, complete, and saying why it looks so.</summary>
internal static class PlainForm
{
    public static string Html(DigestDraft draft, IReadOnlyList<DrawnChart> charts, string why)
    {
        var html = new StringBuilder();
        string E(string s) => HtmlEncoder.Default.Encode(s);
        string Broken(string s) => string.Join("<br>", s.Split('\n').Select(E));
        void P(string s) => html.Append("<p style=\"margin:0 0 8px\">").Append(s).Append("</p>\n");
        void Title(string s) => html.Append("<h2 style=\"font-size:17px\">").Append(E(s)).Append("</h2>\n");
        html.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Append("<meta name=\"color-scheme\" content=\"light dark\"><title>").Append(E(draft.Subject)).Append("</title></head>\n")
            .Append("<body style=\"margin:0;padding:16px;font:15px/1.45 sans-serif\"><div style=\"max-width:600px\">\n");
        P(E(Note(why)));
        foreach (var section in draft.Plain.Where(s => !s.Small && s.Lines.Count > 0))
        {
            if (section.Title.Length > 0) Title(section.Title);
            foreach (var line in section.Lines) P(Broken(line));
        }

        if (charts.Count > 0) Title("Charts");
        foreach (var chart in charts)
        {
            P($"<b>{E(chart.Title)}</b>");
            if (chart.Cid.Length > 0)
                html.Append("<img src=\"cid:").Append(E(chart.Cid)).Append("\" width=\"560\" style=\"width:100%;max-width:560px;background:#fff\" alt=\"").Append(E(chart.Alt)).Append("\">\n");
            else P(E(chart.WhyNot));
            P(E(chart.Alt));
        }

        foreach (var line in draft.Plain.Where(s => s.Small).SelectMany(s => s.Lines)) P($"<small>{Broken(line)}</small>");
        return html.Append("</div></body></html>\n").ToString();
    }

    public static string Text(DigestDraft draft, string why)
    {
        var text = new StringBuilder().Append(Note(why)).Append("\n\n");
        void Item(string line) => text.Append("- ").Append(line.ReplaceLineEndings("\n    ")).Append('\n');
        foreach (var section in draft.Plain.Where(s => !s.Small && s.Lines.Count > 0))
        {
            if (section.Title.Length > 0) text.Append('\n').Append(section.Title.ToUpperInvariant()).Append('\n');
            foreach (var line in section.Lines) Item(line);
        }

        if (draft.Pictures.Count > 0) text.Append("\nCHARTS, IN WORDS\n");
        foreach (var picture in draft.Pictures) Item(picture.Statement);
        text.Append('\n');
        foreach (var line in draft.Plain.Where(s => s.Small).SelectMany(s => s.Lines)) Item(line);
        return text.ToString();
    }

    private static string Note(string why) => $"Plain form: the digest's template could not be used ({why}). Nothing is left out.";
}
