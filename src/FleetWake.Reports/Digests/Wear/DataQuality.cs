using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Season;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What the record lacks, and so what the digest cannot say. By boat and never by person: whose entries are poor is that person's to see.</summary>
internal static class DataQuality
{
    /// <summary>So long without a trial a drift cannot be followed [days]; common practice, no source.</summary>
    public const int TrialDays = 90;

    private const int MostNames = 8;

    public static IReadOnlyList<string> Of(IReadOnlyList<BoatFinding> findings, DateOnly day)
    {
        var sailing = findings.Where(f => f.Retired is null && !f.IsLaidUp()).ToList();
        List<(BoatFinding Finding, PositionFinding Position)> turning = [.. sailing.SelectMany(f => f.Positions.Where(p => p is { Engine: not null, EngineOffOn: null }).Select(p => (f, p)))];
        string?[] lines =
        [
            Line(sailing.Where(f => f.Positions.Any(p => p.Engine is not null) && LastTrial(f) is var last && (last is null ? f.Registered?.RegisteredOn : last) < day.AddDays(-TrialDays)).Select(Name), "boat has", "boats have", $"had no trial for {TrialDays} days"),
            Line(turning.Where(x => x.Position.Engine is { BandLowRpm: null } or { BandHighRpm: null }).Select(x => Phrases.Name(x.Finding, x.Position)), "engine has", "engines have", "no rated band on record: it stands in the owner's manual"),
            Line(turning.Where(x => x.Position.EngineHours is null).Select(x => Phrases.Name(x.Finding, x.Position)), "engine has", "engines have", "no hour reading"),
            Line(turning.Where(x => x.Position.Mounting is null).Select(x => Phrases.Name(x.Finding, x.Position)), "engine has", "engines have", "no prop on record"),
            Line(sailing.Where(f => f.Registered is null).Select(Name), "boat is", "boats are", "not registered"),
        ];
        return [.. lines.OfType<string>()];
    }

    private static DateOnly? LastTrial(BoatFinding finding) => TrialsOf(finding).Select(t => (DateOnly?)t.On).Max();

    /// <summary>The trials of a boat, whichever prop they were run with: a new prop takes none off the record.</summary>
    public static IEnumerable<TrialDay> TrialsOf(BoatFinding finding) =>
        finding.Positions.SelectMany(p => p.Mounting?.Trials ?? []).Select(t => new TrialDay(t.Entry, t.On)).Concat(finding.LastTrials).Distinct();

    private static string? Line(IEnumerable<string> names, string one, string many, string what)
    {
        var all = names.ToList();
        if (all.Count == 0) return null;
        return $"{all.Count} {(all.Count == 1 ? one : many)} {what}: {string.Join(", ", all.Take(MostNames))}{(all.Count > MostNames ? $" and {all.Count - MostNames} more" : "")}.";
    }

    private static string Name(BoatFinding finding) => Phrases.Plain(finding.DisplayName());
}
