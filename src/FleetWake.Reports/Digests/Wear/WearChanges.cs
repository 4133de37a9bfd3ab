using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What happened since the edition before, as the findings date it.</summary>
internal static class WearChanges
{
    private const int MostNames = 6;

    public static IReadOnlyList<string> Of(IReadOnlyList<BoatFinding> findings, DateOnly? since, DateOnly day)
    {
        if (since is not { } from) return [];
        bool New(DateOnly? on) => on > from && on <= day;
        List<(BoatFinding Finding, PositionFinding Position)> all = [.. findings.SelectMany(f => f.Positions.Select(p => (Finding: f, Position: p)))];
        string?[] lines =
        [
            Trials(all, New),
            Line("Struck", all.SelectMany(x => x.Position.Struck.Where(s => New(s.On)).Select(s => $"{Phrases.Name(x.Finding, x.Position)} ({Words.Prose(s.Severity)}, {s.On:yyyy-MM-dd})"))),
            Line("New drift alarm", all.Where(x => New(x.Position.Mounting?.Watch?.RaisedOn)).Select(x => Phrases.Name(x.Finding, x.Position))),
            Line("Inspected", all.Where(x => New(x.Position.LastInspection?.On)).Select(x => $"{Phrases.Name(x.Finding, x.Position)} ({Words.Prose(x.Position.LastInspection!.Verdict)})")),
            Line("Prop fitted", all.Where(x => x.Position.Mounting is { Found: false } m && New(m.FittedOn)).Select(x => $"{Phrases.Plain(x.Position.Mounting!.Prop.Prop)} on {Phrases.Name(x.Finding, x.Position)}")),
            Line("Laid up", findings.Where(f => f.IsLaidUp() && New(f.LayUp?.On)).Select(Name)),
            Line("Relaunched", findings.Where(f => New(f.LayUp?.RelaunchedOn)).Select(Name)),
            Line("Taken out of hire", findings.Where(f => New(f.Hold?.On)).Select(Name)),
            Line("New in the fleet", findings.Where(f => New(f.Registered?.RegisteredOn)).Select(Name)),
            Line("Left the fleet", findings.Where(f => New(f.Retired?.On)).Select(Name)),
        ];
        var told = lines.OfType<string>().ToList();
        return told.Count == 0 ? [$"Nothing new is on record since {from:yyyy-MM-dd}."] : told;
    }

    private static string? Trials(List<(BoatFinding Finding, PositionFinding Position)> all, Func<DateOnly?, bool> isNew)
    {
        var trials = all.SelectMany(x => (x.Position.Mounting?.Trials ?? []).Where(t => isNew(t.On)).Select(t => (x.Finding.Boat, t.Entry))).Distinct().ToList();
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
