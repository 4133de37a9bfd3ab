using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>What strikes and work on props did to the RPM in the last weeks, a line each, the latest first.</summary>
internal static class StepLines
{
    /// <summary>How far back [days]: a strike is trialled when the boat is next free; judgement.</summary>
    private const int BackDays = 56;

    private const int Most = 6;

    private static readonly HistoryMarkKind[] Told = [HistoryMarkKind.Strike, HistoryMarkKind.Repitch, HistoryMarkKind.Repair, HistoryMarkKind.Hub];

    /// <summary>What changed nothing that the trials can tell is no news.</summary>
    private static bool Changed(StepShown step) => step.ShownByTrials && (step.Rpm.Low > 0 || step.Rpm.High < 0);

    public static IReadOnlyList<string> Of(IReadOnlyList<BoatFinding> findings, DateOnly day) =>
    [
        .. findings.Where(f => f.Retired is null)
            .SelectMany(f => f.Positions.SelectMany(p => (p.Mounting?.Steps ?? []).Select(s => (Finding: f, Position: p, Step: s))))
            .Where(x => x.Step.On <= day && x.Step.On.AddDays(BackDays) >= day && StepWords.Kinds(x.Position.Mounting!, x.Step).Intersect(Told).Any() && Changed(x.Step))
            .OrderByDescending(x => x.Step.On)
            .Take(Most)
            .Select(x => $"{Phrases.Name(x.Finding, x.Position)}: {StepWords.Clause(x.Position.Mounting!, x.Step)}."),
    ];
}
