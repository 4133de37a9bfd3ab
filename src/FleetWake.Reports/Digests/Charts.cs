using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>Which positions get a chart: one per boat that needs a person because of its band, its drift or a strike.</summary>
internal static class Charts
{
    public static IReadOnlyList<(string Name, DriftPicture Picture, CusumPicture? Sums)> Of(IReadOnlyList<BoatFinding> findings) =>
    [
        .. findings
            .Select(f => (Finding: f, Position: Worst(f)))
            .Where(c => c.Position is not null)
            .Select(c => (c.Finding, Position: c.Position!, Picture: DriftPictures.Of(c.Finding, c.Position!)))
            .Where(c => c.Picture is not null)
            .OrderBy(c => Rank(c.Position))
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
        if (position.OpenStrikes.Any(s => s.LookedOverOn is null)) return 0; // a scuff that was looked over needs nobody
        if (Standings.Of(position).Outside) return 1;
        return position.Mounting!.Exit.Within100HoursChance >= NextTrialCard.ActAtChance || Alarmed(position) ? 2 : Quiet;
    }
}
