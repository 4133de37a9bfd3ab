using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>Questions of the record: only how many and about what, for each is answered in the office.</summary>
internal static class OpenQuestions
{
    private const int MostNames = 6;

    /// <summary>The questions in a sentence; null when there is none.</summary>
    public static string? Of(IReadOnlyList<BoatFinding> findings)
    {
        var all = findings.SelectMany(f => f.Contradictions.Select(c => (Name: Phrases.Plain(f.DisplayName()), c.Kind))).ToList();
        if (all.Count == 0) return null;
        var about = all.GroupBy(q => q.Kind).OrderBy(g => g.Key).Select(g => $"{About(g.Key)} ({Names([.. g.Select(q => q.Name).Distinct(StringComparer.Ordinal)])})");
        return $"{(all.Count == 1 ? "1 question waits" : $"{all.Count} questions wait")} for an answer: {string.Join("; ", about)}.";
    }

    private static string Names(IReadOnlyList<string> names) => $"{string.Join(", ", names.Take(MostNames))}{(names.Count > MostNames ? $" and {names.Count - MostNames} more" : "")}";

    private static string About(ContradictionKind kind) => kind switch
    {
        ContradictionKind.PropInTwoPlaces => "a prop in two places",
        ContradictionKind.PropAlreadyFitted => "a prop fitted over another",
        ContradictionKind.NoPropToRemove => "a prop taken off that was not on",
        ContradictionKind.HoursOutOfLine => "an hour reading",
        ContradictionKind.RpmOutOfLine => "an RPM reading",
        ContradictionKind.TrialWithoutProp => "a trial without a prop",
        ContradictionKind.NoSuchPosition => "a position that the boat has not",
        ContradictionKind.NothingToCorrect => "a correction of nothing",
        ContradictionKind.FoundAnotherProp => "another prop found than recorded",
        ContradictionKind.EngineNotThere => "an engine that hangs elsewhere",
        ContradictionKind.RotationDoesNotFit => "a prop that turns the other way",
        ContradictionKind.RegisteredTwice => "a boat registered twice",
        ContradictionKind.PropAway => "a prop used while away",
        _ => "a claim that nobody opened",
    };
}
