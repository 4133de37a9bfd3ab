using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What happened since the edition before, as the findings date it.</summary>
internal static class WearChanges
{
    private const int MostNames = 6;

    /// <summary>What happened longer than this before the edition before is history that was brought in, and no news [days]; judgement.</summary>
    private const int LateDays = 35;

    public static IReadOnlyList<string> Of(IReadOnlyList<BoatFinding> findings, WearNews news, DateOnly day)
    {
        if (news.Since is not { } from) return [];

        // The edition before went out in the morning of its day: what was received later is new, also when it happened on that day or earlier.
        var entries = news.Received?.Select(r => r.Entry).ToHashSet();
        var days = news.Received?.Select(r => (r.Boat, r.On)).ToHashSet();
        bool New(BoatFinding f, DateOnly? on, Guid? entry = null) =>
            on <= day && on > from.AddDays(-LateDays) && (entries is null ? on > from : entry is { } id ? entries.Contains(id) : days!.Contains((f.Boat, on.Value)));
        List<(BoatFinding Finding, PositionFinding Position)> all = [.. findings.SelectMany(f => f.Positions.Select(p => (Finding: f, Position: p)))];
        string?[] lines =
        [
            Trials(findings, New),
            Line("Struck", all.SelectMany(x => x.Position.Struck.Where(s => New(x.Finding, s.On, s.Entry)).Select(s => (x.Finding, x.Position, s.On, s.Severity))).OrderByDescending(s => s.On).ThenByDescending(s => s.Severity).Select(s => $"{Phrases.Name(s.Finding, s.Position)} ({Words.Prose(s.Severity)}, {s.On:yyyy-MM-dd})")),
            Line("New drift alarm", all.Where(x => New(x.Finding, x.Position.Mounting?.Watch?.RaisedOn, x.Position.Mounting?.Watch?.RaisedAt)).Select(x => Phrases.Name(x.Finding, x.Position))),
            Line("Inspected", all.Where(x => New(x.Finding, x.Position.LastInspection?.On, x.Position.LastInspection?.Entry)).Select(x => $"{Phrases.Name(x.Finding, x.Position)} ({Words.Prose(x.Position.LastInspection!.Verdict)})")),
            Line("Prop fitted", all.Where(x => x.Position.Mounting is { Found: false } m && New(x.Finding, m.FittedOn, Guid.TryParse(m.Mounting, out var fitting) ? fitting : null)).Select(x => $"{Phrases.Plain(x.Position.Mounting!.Prop.Prop)} on {Phrases.Name(x.Finding, x.Position)}")),
            Line("Laid up", findings.Where(f => f.IsLaidUp() && New(f, f.LayUp?.On)).Select(Name)),
            Line("Relaunched", findings.Where(f => New(f, f.LayUp?.RelaunchedOn)).Select(Name)),
            Line("Taken out of hire", findings.Where(f => New(f, f.Hold?.On)).Select(Name)),
            Line("New in the fleet", findings.Where(f => New(f, f.Registered?.RegisteredOn)).Select(Name)),
            Line("Left the fleet", findings.Where(f => New(f, f.Retired?.On)).Select(Name)),
        ];
        var told = lines.OfType<string>().ToList();
        return told.Count == 0 ? [$"Nothing new is on record since {from:yyyy-MM-dd}."] : told;
    }

    private static string? Trials(IReadOnlyList<BoatFinding> findings, Func<BoatFinding, DateOnly?, Guid?, bool> isNew)
    {
        var trials = findings.SelectMany(f => DataQuality.TrialsOf(f).Where(t => isNew(f, t.On, t.Entry)).Select(t => (f.Boat, t.Entry))).Distinct().ToList();
        return trials.Count == 0 ? null : $"{Phrases.Count(trials.Count, "trial")} of {Phrases.Count(trials.Select(t => t.Boat).Distinct(StringComparer.Ordinal).Count(), "boat")}.";
    }

    private static string? Line(string what, IEnumerable<string> names)
    {
        var all = names.ToList();
        if (all.Count == 0) return null;
        return $"{what}: {string.Join(", ", all.Take(MostNames))}{(all.Count > MostNames ? $" and {all.Count - MostNames} more" : "")}.";
    }

    private static string Name(BoatFinding finding) => Phrases.Plain(finding.DisplayName());
}
