using FleetWake.Logbook.Boats;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// What the trials of the present stretch point to, held against its first: the group first, one cause where RPM and speed single
/// it out, else those that are tied and what would part them. A cause is no proof: only a look and a gauge are.
/// </summary>
/// <param name="Group">The likelier group.</param>
/// <param name="GroupProbability">Probability that it is a cause of this group [1]; the rest is the other one, nothing of size, or several at once.</param>
/// <param name="Named">The single cause, when it is ten times as likely as every other explanation; else null.</param>
/// <param name="Tied">The explanations that the readings cannot tell apart, the likeliest first.</param>
/// <param name="Tests">What would part them, the cheapest first.</param>
/// <param name="Trials">How many trials were held against the first.</param>
public sealed record PointsTo(CauseGroup Group, double GroupProbability, Cause? Named, IReadOnlyList<Cause> Tied, IReadOnlyList<SeparatingTest> Tests, int Trials)
{
    /// <summary>More trials than these say little more of what changed since, and cost much to weigh.</summary>
    private const int MostTrials = 12;

    /// <summary>A change beyond this is another boat or a wrong reading [1].</summary>
    private const double LargestChange = 0.4;

    /// <summary>Expanded area ratio of an outboard's prop where nobody tells [1]. Common practice, no source; RPM and speed hardly depend on it.</summary>
    private const double UsualAreaRatio = 0.55;

    private const int UsualBlades = 3;
    private const string One = "one";

    /// <summary>What the trials point to; null without two that can be compared, or without the numbers of prop and gear.</summary>
    /// <param name="trials">The usable trials of the present stretch in order, worked out, and whether somebody read the air of each.</param>
    /// <param name="engine">The engine.</param>
    /// <param name="prop">The prop.</param>
    internal static PointsTo? Of(IReadOnlyList<(CorrectedTrial Trial, bool AirRead)> trials, EngineCard? engine, PropCard prop)
    {
        if (trials.Count < 2 || Models(trials[0].Trial, engine, prop) is not { } models) return null;
        var response = BoatResponse.Prior;
        var changes = trials.Skip(1).TakeLast(MostTrials)
            .Select(t => WideOpenChange.Between(One, One, t.Trial, trials[0].Trial, response))
            .Where(Comparable).ToList();
        if (changes.Count == 0) return null;
        var found = Diagnosis.Of(new CauseCase
        {
            Models = models,
            Baselines = [new BoatBaseline(One, One, ChangeDoubt.Of(trials[0].Trial, response))],
            WideOpen = changes,
            AirUnread = trials.Any(t => !t.AirRead),
            VentilationSeen = trials.Any(t => t.Trial.Doubts.Contains(TrialDoubt.Ventilation)) ? true : null,
        });
        return new PointsTo(
            found.Group,
            found.Group == CauseGroup.RpmUp ? found.RpmUpProbability : found.RpmDownProbability,
            found.Named?.Cause,
            [.. found.Tied.Select(s => s.Cause)],
            found.Tests,
            changes.Count);
    }

    private static IReadOnlyList<ResponseModel>? Models(CorrectedTrial baseline, EngineCard? engine, PropCard prop)
    {
        if (engine?.GearRatio is not { } gear || prop is not { PitchInches: { } P, DiameterInches: { } D }) return null;
        if (baseline.SpeedKnots is not { Value: > 0 } speed || !(P / D is > 0.1 and < 3)) return null;
        var n = PropRate.Of(EngineRate.FromRevolutionsPerMinute(baseline.Rpm.Value), new GearRatio(gear)).RevolutionsPerSecond; // [rev/s]
        var J = Speed.FromKnots(speed.Value).MetresPerSecond / (n * Length.FromInches(D).Metres);                               // [1]
        // Without slip, or with nothing but slip, the pitch on record is not the one that turned.
        return J / (P / D) is > 0.2 and < 0.98
            ? ResponseModels.About(new BladeShape(prop.Blades ?? UsualBlades, UsualAreaRatio, P / D), J, BoatResponse.Prior.Gain)
            : null;
    }

    private static bool Comparable(WideOpenChange change) =>
        Math.Abs(change.LnRpm) < LargestChange && Math.Abs(change.LnSpeed ?? 0) < LargestChange && change.Doubt.Rpm is > 0 and < LargestChange
        && (change.LnSpeed is null || change.Doubt.Speed is > 0 and < LargestChange);
}
