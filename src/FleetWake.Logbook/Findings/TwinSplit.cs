using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Findings;

/// <summary>How far apart twins turned at one speed: evidence of one prop worn more than the other, or of one engine pulling less.</summary>
/// <param name="Entry">The trial it was read in.</param>
/// <param name="On">Dock's date.</param>
/// <param name="PortLessStarboardRpm">What the engine turned at port less that at starboard [RPM], by checked gauges where they were checked; larger than the coarser gauge's step.</param>
public sealed record TwinSplit(Guid Entry, DateOnly On, double PortLessStarboardRpm)
{
    /// <summary>The split of the last wide-open trial that read both; null when there is none, or when it lies within a gauge's step and says nothing.</summary>
    internal static TwinSplit? Of(IReadOnlyList<PositionFinding> positions)
    {
        if (At(Position.Port) is not { Mounting: { } left } port || At(Position.Starboard) is not { Mounting: { } right } starboard) return null;
        var both = left.Trials.Where(Tells)
            .Join(right.Trials.Where(Tells), p => p.Entry, s => s.Entry, (p, s) => new TwinSplit(p.Entry, p.On, p.TurnedRpm - s.TurnedRpm))
            .LastOrDefault();
        return Math.Abs(both?.PortLessStarboardRpm ?? 0) > Math.Max(Step(port), Step(starboard)) ? both : null;

        PositionFinding? At(Position position) => positions.FirstOrDefault(p => p.Position == position);
    }

    // Two gauges of one run tell a split whether or not it counts for drift.
    private static bool Tells(TrialFinding trial) => trial.SetAside is null or SetAsideReason.HoursUnknown or SetAsideReason.OtherConditions;

    private static double Step(PositionFinding position) => position.Engine?.TachometerStepRpm ?? TachometerSteps.UnknownRpm;
}
