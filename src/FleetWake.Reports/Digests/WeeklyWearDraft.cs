using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>The weekly wear digest, ready to be laid out.</summary>
public static class WeeklyWearDraft
{
    /// <summary>The draft of a content.</summary>
    public static DigestDraft Of(WeeklyWearContent content) => new(WeeklyWear.Digest, content.Subject, content, [.. Sections(content)])
    {
        Pictures = [.. Pictures(content)],
    };

    /// <summary>The charts of the decisions in their order, each with the sums of the same position behind it; the strip of all boats; then the others.</summary>
    private static IEnumerable<DraftPicture> Pictures(WeeklyWearContent content)
    {
        var keys = content.Decisions.Select(d => d.Chart).Where(k => k.Length > 0).ToList();
        foreach (var chart in content.Charts.Where(c => keys.Contains(Decisions.ChartKey(c.Boat))).OrderBy(c => keys.IndexOf(Decisions.ChartKey(c.Boat))))
            foreach (var picture in Of(content, chart, Decisions.ChartKey(chart.Boat))) yield return picture;
        if (content.Strip is { } strip) yield return new DraftPicture("strip", strip.Title, strip.Statement, r => r.Render(strip));
        foreach (var chart in content.Charts.Where(c => !keys.Contains(Decisions.ChartKey(c.Boat))))
            foreach (var picture in Of(content, chart, "other")) yield return picture;
    }

    private static IEnumerable<DraftPicture> Of(WeeklyWearContent content, DriftPicture chart, string key)
    {
        yield return new DraftPicture(key, chart.Title, chart.Statement, r => r.Render(chart));
        foreach (var sums in content.Sums.Where(s => s.Boat == chart.Boat && s.Position == chart.Position))
            yield return new DraftPicture(key, $"{sums.Title}, trial by trial", sums.Statement, r => r.Render(sums));
    }

    private static IEnumerable<PlainSection> Sections(WeeklyWearContent content)
    {
        yield return new("", [$"{content.OperatorName}, wear digest {content.Period}, {content.Day:yyyy-MM-dd}", content.Headline, .. Left(content.Waiting)]);
        yield return new("What changes Monday", [.. content.Monday.Select(m => $"{m.Name}{(m.Dock.Length > 0 ? $" ({m.Dock})" : "")} {m.Sentence}".TrimStart() + Link(m.Link))]);
        yield return new("To decide", [.. content.Decisions.Select(d => $"{d.Boat}{(d.Dock.Length > 0 ? $" ({d.Dock})" : "")}: {d.State}\n{string.Join("\n", [.. d.Points.Select(p => $"{p.Sentence} {p.Settles}"), .. new[] { d.Exit, d.Waiting, d.Link }.Where(l => l.Length > 0)])}"), .. Left(content.DecisionsLeftOut), .. Left(content.Questions), .. Left(content.LaidUp)]);
        yield return new(content.Since is { } since ? $"Since {since:yyyy-MM-dd}" : "", content.Changes);
        yield return new("What strikes and work did", content.Steps);
        yield return new("Overdue", [.. content.Overdue.Select(d => $"{d.Boat} ({d.Dock}): {d.What}, {d.When}"), .. Left(content.DueLeftOut)]);
        yield return new("Drifting, or near an edge", [.. content.Boats.Select(b => string.Join("; ", new[] { $"{b.Sign} {b.Name}: {b.State}", b.Margin, b.Drift, b.Exit, b.Alarm }.Where(x => x.Length > 0)) + Link(b.Link)), .. Left(content.OtherBoats), .. Left(content.WithoutTrials)]);
        yield return new("Trials worth running", [.. content.Trials.Select(t => $"{t.Name}{(t.Dock.Length > 0 ? $" ({t.Dock})" : "")}: {t.Decides}"), .. Left(content.TrialsLeftOut)]);
        yield return new("Props in the shop", content.InShop);
        yield return new("Spares to order", content.SparesToOrder);
        yield return new("Strikes by dock", content.StrikesByDock);
        yield return new("What the record lacks", content.DataQuality);
        yield return new("", [.. Left(content.ChartsLeftOut), .. content.Caution, .. content.Method], Small: true);
    }

    private static IEnumerable<string> Left(string? sentence) => string.IsNullOrEmpty(sentence) ? [] : [sentence];

    private static string Link(string link) => link.Length == 0 ? "" : $"\n{link}";
}
