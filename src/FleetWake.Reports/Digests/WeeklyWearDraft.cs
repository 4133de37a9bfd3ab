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

    /// <summary>Each chart, with the sums of the same position behind it.</summary>
    private static IEnumerable<DraftPicture> Pictures(WeeklyWearContent content)
    {
        foreach (var chart in content.Charts)
        {
            yield return new DraftPicture("drift", chart.Title, chart.Statement, r => r.Render(chart));
            foreach (var sums in content.Sums.Where(s => s.Boat == chart.Boat && s.Position == chart.Position))
                yield return new DraftPicture("sums", $"{sums.Title}, trial by trial", sums.Statement, r => r.Render(sums));
        }
    }

    private static IEnumerable<PlainSection> Sections(WeeklyWearContent content)
    {
        yield return new("", [$"{content.OperatorName}, wear digest {content.Period}, {content.Day:yyyy-MM-dd}", content.Headline]);
        yield return new("To decide", [.. content.Decisions.Select(d => $"{d.Boat}{(d.Dock.Length > 0 ? $" ({d.Dock})" : "")}: {d.State}\n{string.Join("\n", d.Points.Select(p => $"{p.Sentence} {p.Settles}"))}")]);
        yield return new("What strikes and work did", content.Steps);
        yield return new("Trials worth running", [.. content.Trials.Select(t => $"{t.Name}{(t.Dock.Length > 0 ? $" ({t.Dock})" : "")}: {t.Decides};\n{t.Shows}"), .. Left(content.TrialsLeftOut)]);
        yield return new("Overdue", [.. content.Overdue.Select(Due)]);
        yield return new("Due within 14 days", [.. content.DueSoon.Select(Due)]);
        yield return new("Boats by margin, smallest first", [
            .. content.Boats.Select(b => $"{b.Sign} {b.Name} ({b.Prop}): {(b.Hire.Length > 0 ? $"{b.Hire}; " : "")}{b.State}\n{b.Rpm}, {b.Margin}, {b.Band}, {b.Read}\n{b.Drift}; {b.Exit}{string.Concat(new[] { b.Alarm, b.Wrong, b.Causes }.Where(x => x.Length > 0).Select(x => $"\n{x}"))}"),
            .. Left(content.BoatsLeftOut)]);
        yield return new("Boats without a trial", content.WithoutTrials);
        yield return new("", [.. Left(content.ChartsLeftOut), .. content.Caution, .. content.Method], Small: true);
    }

    private static IEnumerable<string> Left(string? sentence) => sentence is null ? [] : [sentence];

    private static string Due(DueRow d) => $"{d.Boat} ({d.Dock}): {d.What}, due {d.When}; {d.Why}";
}
