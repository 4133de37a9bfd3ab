using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mail;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Alert;

/// <summary>An alert as data.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Headline">What it is about, in a sentence.</param>
/// <param name="Rows">What cannot wait, most urgent first.</param>
/// <param name="LeftOut">How many found no room; null when all did.</param>
/// <param name="Caution">What it is not.</param>
[InTemplates]
public sealed record AlertContent(string Operator, string Headline, IReadOnlyList<AlertRow> Rows, string? LeftOut, IReadOnlyList<string> Caution)
{
    /// <summary>Most rows in a message; after an import there may be hundreds.</summary>
    private const int MostRows = 40;

    private const int MostCharts = 3;

    /// <summary>The alert, ready to be laid out.</summary>
    /// <param name="operatorName">The operator's name.</param>
    /// <param name="causes">What it tells of, most urgent first.</param>
    /// <param name="findings">The boats, for their charts.</param>
    /// <param name="docks">Names of docks by id.</param>
    /// <param name="pages">Address of the office's pages; null where none is set.</param>
    public static DigestDraft Draft(string operatorName, IReadOnlyList<AlertCause> causes, IReadOnlyList<BoatFinding> findings, Func<string, string> docks, Uri? pages)
    {
        var name = Phrases.Plain(operatorName);
        List<AlertRow> rows =
        [
            .. causes.Take(MostRows).Select(c => new AlertRow(
                c.Name, c.Dock is { } dock ? Phrases.Plain(docks(dock)) : "", Word(c.Kind), c.Urgent, c.Sentence, c.Act,
                pages is null ? "" : new Uri(pages, c.Kind == AlertKind.Question ? "office/questions" : $"office/boats/{Uri.EscapeDataString(c.Boat)}").AbsoluteUri)),
        ];
        var first = causes[0];
        var headline = causes.Count == 1 ? $"{first.Name}: {Word(first.Kind)}." : $"{causes.Count} matters that cannot wait, {first.Name} ({Word(first.Kind)}) first.";
        var subject = causes.Count == 1 ? $"{name}: {first.Name}, {Word(first.Kind)}" : $"{name}: {causes.Count} alerts, {first.Name} ({Word(first.Kind)}) first";
        var content = new AlertContent(
            name, headline, rows, causes.Count > rows.Count ? $"And {causes.Count - rows.Count} more: see the office." : null,
            ["This is a decision aid. The owner's manual, local rules and a licensed technician win. Only an inspection says fit.", "Before touching a propeller: engine off, key out, lanyard off."]);
        return new DigestDraft(DigestNames.Alert, subject, content, [.. Plain(content)]) { Pictures = [.. Pictures(causes, findings)] };
    }

    /// <summary>A kind in few words.</summary>
    public static string Word(AlertKind kind) => kind switch
    {
        AlertKind.TakeOff => "take off",
        AlertKind.SevereStrike => "severe strike",
        AlertKind.OutsideBand => "outside its band",
        AlertKind.Exit => "near the edge of its band",
        AlertKind.Drift => "drift alarm",
        _ => "a question",
    };

    private static IEnumerable<DraftPicture> Pictures(IReadOnlyList<AlertCause> causes, IReadOnlyList<BoatFinding> findings) =>
        causes.Where(c => c.Kind is AlertKind.OutsideBand or AlertKind.Exit or AlertKind.Drift && c.Position is not null).DistinctBy(c => (c.Boat, c.Position))
            .Select(c => findings.FirstOrDefault(f => f.Boat == c.Boat) is { } finding && finding.Positions.FirstOrDefault(p => p.Position == c.Position) is { } position ? DriftPictures.Of(finding, position) : null)
            .OfType<DriftPicture>().Take(MostCharts).Select(p => new DraftPicture("drift", p.Title, p.Statement, r => r.Render(p)));

    private static IEnumerable<PlainSection> Plain(AlertContent content)
    {
        yield return new("", [content.Operator, content.Headline]);
        yield return new("What cannot wait", [.. content.Rows.Select(r => $"{r.Name}{(r.Dock.Length > 0 ? $" ({r.Dock})" : "")}: {r.Word}\n{r.Sentence}\n{r.Act}{(r.Link.Length > 0 ? $"\n{r.Link}" : "")}"), .. content.LeftOut is { } left ? [left] : Array.Empty<string>()]);
        yield return new("", content.Caution, Small: true);
    }
}

/// <summary>One matter of an alert.</summary>
/// <param name="Name">Boat and position.</param>
/// <param name="Dock">Its dock; empty while it is not registered.</param>
/// <param name="Word">What it is, in few words.</param>
/// <param name="Urgent">It waits for nothing.</param>
/// <param name="Sentence">What is the matter.</param>
/// <param name="Act">What to do.</param>
/// <param name="Link">Address of the page about it; empty where none is set.</param>
[InTemplates]
public sealed record AlertRow(string Name, string Dock, string Word, bool Urgent, string Sentence, string Act, string Link);
