using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>
/// Which positions get a chart: one a boat whose band or drift is to be decided on, in the order of the decisions, then those whose drift is likely
/// to be next. A strike alone gets none: no chart says whether a blade is bent.
/// </summary>
internal static class Charts
{
    public static IReadOnlyList<(string Name, DriftPicture Picture, CusumPicture? Sums)> Of(IReadOnlyList<BoatFinding> findings, IReadOnlySet<string> decided) =>
    [
        .. findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .Select(f => (Finding: f, Position: Worst(f)))
            .Where(c => c.Position is not null)
            .Select(c => (c.Finding, Position: c.Position!, Picture: DriftPictures.Of(c.Finding, c.Position!)))
            .Where(c => c.Picture is not null)
            .OrderByDescending(c => decided.Contains(c.Finding.Boat))
            .ThenBy(c => Rank(c.Position))
            .ThenBy(c => Standings.Of(c.Position).MarginRpm ?? double.MaxValue)
            .Select(c => (Phrases.Name(c.Finding, c.Position), c.Picture!, Alarmed(c.Position) ? CusumPictures.Of(c.Finding, c.Position) : null)),
    ];

    // Of twins, the position that needs it more; its neighbour stands in the table.
    private static PositionFinding? Worst(BoatFinding finding) =>
        finding.Positions
            .Where(p => p.Mounting is not null && Rank(p) < Quiet)
            .OrderBy(Rank)
            .ThenBy(p => Standings.Of(p).MarginRpm ?? double.MaxValue)
            .FirstOrDefault();

    private const int Quiet = 3;

    private static bool Alarmed(PositionFinding position) => position.Mounting?.Watch?.RaisedAt is not null;

    private static int Rank(PositionFinding position)
    {
        if (Standings.Of(position).Outside) return 0;
        return position.Mounting!.Exit.Within100HoursChance >= NextTrialCard.ActAtChance ? 1 : Alarmed(position) ? 2 : Quiet;
    }
}
