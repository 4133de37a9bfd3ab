using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>Boats by margin: one row per position that has a trial; the others in words.</summary>
internal static class BoatRows
{
    public static IReadOnlyList<BoatRow> Of(IReadOnlyList<BoatFinding> findings, IReadOnlyList<DecisionItem> decisions, FleetPolicy? policy = null) =>
    [
        .. findings
            .SelectMany(f => f.Positions.Where(HasTrial).Select(p => (Finding: f, Position: p, Standing: Standings.Of(p))))
            .OrderBy(r => r.Standing.MarginRpm ?? double.MaxValue)
            .Select(r => Row(r.Finding, r.Position, r.Standing, decisions, policy)),
    ];

    public static IReadOnlyList<string> WithoutTrials(IReadOnlyList<BoatFinding> findings) =>
    [
        .. findings.Where(f => f.Retired is null).SelectMany(f => f.Positions.Where(p => !HasTrial(p) && p is not { NotOnBoat: true, Engine: null, Mounting: null }).Select(p => (Finding: f, Position: p)))
            .Select(x => x.Position switch
            {
                { Engine: null, Mounting: null } => $"{Phrases.Name(x.Finding, x.Position)}: no engine on record.",
                { Mounting: null } => $"{Phrases.Name(x.Finding, x.Position)}: no prop on record.",
                _ => $"{Phrases.Name(x.Finding, x.Position)}: no trial of prop {Phrases.Plain(x.Position.Mounting.Prop.Prop)} yet; nothing is said of its RPM.",
            }),
    ];

    private static bool HasTrial(PositionFinding position) => position.Mounting is { Trials.Count: > 0 };

    private static BoatRow Row(BoatFinding finding, PositionFinding position, Standing standing, IReadOnlyList<DecisionItem> decisions, FleetPolicy? policy)
    {
        var mounting = position.Mounting!;
        var observed = mounting.Band.ObservedRpm;
        var band = position.Engine is { BandLowRpm: { } low, BandHighRpm: { } high } ? (low, high) : ((double Low, double High)?)null;

        // The trial whose reading is shown: a later one may be at part throttle, or brought to other conditions.
        var last = mounting.LastWideOpen(position.Engine);
        return new BoatRow(
            Phrases.Name(finding, position),
            $"prop {Phrases.Plain(mounting.Prop.Prop)}",
            Decisions.Hire(HireStates.Of(finding, policy).Word) ?? "",
            standing.Sign,
            standing.Word,
            standing.Outside,
            observed is { } o ? $"{o:0} RPM" : "no wide-open reading",
            last is null ? "" : $"read {last.On:yyyy-MM-dd}{(last.Hours is { } h ? $" at {h:0} h" : ", hours not known")}",
            band is { } b ? $"band {b.Item1:0} to {b.Item2:0}" : "no band on record",
            observed is { } read && band is { } e ? Margin(read, standing.TogetherRpm ?? mounting.Band.PresentRpm ?? read, e.Item1, e.Item2) : "margin not known",
            Phrases.Drift(mounting),
            Phrases.Exit(mounting.Exit),
            Phrases.Alarm(mounting.Watch) ?? "",
            Phrases.Wrong(mounting) ?? "",
            Untold(mounting, decisions.Where(d => d.Boat == Phrases.Plain(finding.DisplayName()) && d.Dock == Phrases.Plain(finding.Registered?.Dock ?? ""))));
    }

    /// <summary>What the trials point to, unless a decision of the boat has said so: it is said once.</summary>
    private static string Untold(MountingFinding mounting, IEnumerable<DecisionItem> decisions)
    {
        var causes = Phrases.Plain(CauseWords.Of(mounting.PointsTo));
        return causes.Length > 0 && decisions.Any(d => d.Points.Any(p => p.Sentence.Contains(causes, StringComparison.Ordinal))) ? "" : causes;
    }

    /// <summary>The margin that the rows are sorted by, and where it comes from when that is not the reading shown beside it.</summary>
    private static string Margin(double read, double together, double low, double high) =>
        Standings.Margin(read, low, high) <= Standings.Margin(together, low, high) || Math.Abs(read - together) < 1
            ? Standings.Place(read, low, high)
            : $"{Standings.Place(together, low, high)} by its trials together";
}
