using FleetWake.Propulsion;
using FleetWake.Propulsion.Causes;
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
    /// <summary>Probability that nothing of size changed [1].</summary>
    public double NothingProbability { get; init; }

    /// <summary>What the trials point to; null without two that can be compared, or without the numbers of prop and gear.</summary>
    /// <param name="trials">The trials of the present stretch in order, of which none was set aside for its RPM.</param>
    /// <param name="engine">The engine.</param>
    /// <param name="prop">The prop.</param>
    /// <param name="response">The response that the trials were corrected by.</param>
    internal static PointsTo? Of(IReadOnlyList<AssessMounting.Worked> trials, EngineCard? engine, PropCard prop, BoatResponse response)
    {
        // The pitch of the prop as it ran then: after a mounting ended its prop goes on changing.
        if (engine?.GearRatio is not { } gear || trials is not [{ PitchInches: { } pitch }, ..] || prop.DiameterInches is not { } diameter) return null;
        var data = new PropData(Length.FromInches(pitch)) { Diameter = Length.FromInches(diameter), Blades = prop.Blades };
        if (AgainstBaseline.Of([.. trials.Select(t => (t.Corrected!, t.Trial.Reference is not null))], new GearRatio(gear), data, response, trials.All(t => t.Watched)) is not { } held) return null;
        var found = held.Finding;
        return new PointsTo(
            found.Group,
            CauseWords.ProbabilityOfGroup(found),
            found.Named?.Cause,
            [.. found.Tied.Select(s => s.Cause)],
            found.Tests,
            held.Changes.Count)
        {
            NothingProbability = found.Suspects.FirstOrDefault(s => s.Cause == Cause.None)?.Probability ?? 0,
        };
    }
}
