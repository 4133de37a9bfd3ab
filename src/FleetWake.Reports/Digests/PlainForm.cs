using System.Text;
using System.Text.Encodings.Web;

namespace FleetWake.Reports.Digests;

/// <summary>The digest without a template: bare, complete, and saying why it looks so.</summary>
internal static class PlainForm
{
    private const string StepsTitle = "What strikes and work did";

    public static string Html(WeeklyWearContent content, IReadOnlyList<DrawnChart> charts, string why)
    {
        var html = new StringBuilder();
        string E(string s) => HtmlEncoder.Default.Encode(s);
        void P(string s) => html.Append("<p style=\"margin:0 0 8px\">").Append(s).Append("</p>\n");
        html.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Append("<meta name=\"color-scheme\" content=\"light dark\"><title>").Append(E(content.Subject)).Append("</title></head>\n")
            .Append("<body style=\"margin:0;padding:16px;font:15px/1.45 sans-serif\"><div style=\"max-width:600px\">\n");
        P(E(Note(why)));
        foreach (var section in Sections(content))
        {
            if (section.Title.Length > 0) html.Append("<h2 style=\"font-size:17px\">").Append(E(section.Title)).Append("</h2>\n");
            foreach (var line in section.Lines) P(string.Join("<br>", line.Split('\n').Select(E)));
        }

        if (charts.Count > 0) html.Append("<h2 style=\"font-size:17px\">Charts</h2>\n");
        foreach (var chart in charts)
        {
            P($"<b>{E(chart.Title)}</b>");
            if (chart.Cid.Length > 0)
                html.Append("<img src=\"cid:").Append(E(chart.Cid)).Append("\" width=\"560\" style=\"width:100%;max-width:560px;background:#fff\" alt=\"").Append(E(chart.Alt)).Append("\">\n");
            else P(E(chart.WhyNot));
            P(E(chart.Alt));
        }

        if (content.ChartsLeftOut is { } left) P(E(left));
        foreach (var line in content.Caution.Concat(content.Method)) P($"<small>{E(line)}</small>");
        return html.Append("</div></body></html>\n").ToString();
    }

    public static string Text(WeeklyWearContent content, string why)
    {
        var text = new StringBuilder().Append(Note(why)).Append("\n\n");
        foreach (var section in Sections(content))
        {
            if (section.Title.Length > 0) text.Append('\n').Append(section.Title.ToUpperInvariant()).Append('\n');
            foreach (var line in section.Lines) text.Append("- ").Append(line.ReplaceLineEndings("\n    ")).Append('\n');
        }

        text.Append("\nCHARTS, IN WORDS\n");
        foreach (var said in content.Charts.Select(c => c.Statement).Concat(content.Sums.Select(c => c.Statement))) text.Append("- ").Append(said).Append('\n');
        foreach (var line in (content.ChartsLeftOut is { } left ? [left] : Array.Empty<string>()).Concat(content.Caution).Concat(content.Method))
            text.Append("- ").Append(line).Append('\n');
        return text.ToString();
    }

    private static string Note(string why) => $"Plain form: the digest's template could not be used ({why}). Nothing is left out.";

    private static IEnumerable<(string Title, IReadOnlyList<string> Lines)> Sections(WeeklyWearContent content)
    {
        yield return ("", [$"{content.OperatorName}, wear digest {content.Period}, {content.Day:yyyy-MM-dd}", content.Headline]);
        if (content.Decisions.Count > 0)
            yield return ("To decide", [.. content.Decisions.Select(d => $"{d.Boat}{(d.Dock.Length > 0 ? $" ({d.Dock})" : "")}: {d.State}\n{string.Join("\n", d.Points.Select(p => $"{p.Sentence} {p.Settles}"))}")]);
        if (content.Steps.Count > 0) yield return (StepsTitle, content.Steps);
        if (content.Trials.Count > 0 || content.TrialsLeftOut is not null)
            yield return ("Trials worth running", [
                .. content.Trials.Select(t => $"{t.Name}{(t.Dock.Length > 0 ? $" ({t.Dock})" : "")}: {t.Decides};\n{t.Shows}"),
                .. content.TrialsLeftOut is { } untried ? [untried] : Array.Empty<string>()]);
        if (content.Overdue.Count > 0) yield return ("Overdue", [.. content.Overdue.Select(Due)]);
        if (content.DueSoon.Count > 0) yield return ("Due within 14 days", [.. content.DueSoon.Select(Due)]);
        if (content.Boats.Count > 0)
            yield return ("Boats by margin, smallest first", [
                .. content.Boats.Select(b => $"{b.Sign} {b.Name} ({b.Prop}): {(b.Hire.Length > 0 ? $"{b.Hire}; " : "")}{b.State}\n{b.Rpm}, {b.Margin}, {b.Band}, {b.Read}\n{b.Drift}; {b.Exit}{string.Concat(new[] { b.Alarm, b.Wrong, b.Causes }.Where(x => x.Length > 0).Select(x => $"\n{x}"))}"),
                .. content.BoatsLeftOut is { } left ? [left] : Array.Empty<string>()]);
        if (content.WithoutTrials.Count > 0) yield return ("Boats without a trial", content.WithoutTrials);
    }

    private static string Due(DueRow d) => $"{d.Boat} ({d.Dock}): {d.What}, due {d.When}; {d.Why}";
}
