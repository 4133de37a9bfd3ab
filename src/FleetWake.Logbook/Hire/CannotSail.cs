using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;

namespace FleetWake.Logbook.Hire;

/// <summary>
/// What keeps a boat although nothing was struck and nothing was found: no engine or prop on, nobody knows the boat, or
/// it went out again without the look that was asked for. Nobody at the dock lifts these: what is missing is missing.
/// </summary>
internal static class CannotSail
{
    /// <summary>The reasons of a boat. One that is laid up or gone is out for that, and its prop may well lie in the shed.</summary>
    public static IReadOnlyList<HireReason> Of(BoatFinding finding, FleetPolicy? policy) =>
        finding.Retired is not null || finding.IsLaidUp()
            ? []
            : [.. Held(finding), .. finding.Positions.Where(p => !p.NotOnBoat).SelectMany(p => At(p).Concat(Relaunched(finding, p, policy ?? FleetPolicy.Usual)))];

    /// <summary>The same for those who have to act. Records that are held are told in words of their own.</summary>
    public static IEnumerable<Attention> Attentions(BoatFinding finding, FleetPolicy? policy) =>
        from reason in Of(finding, policy)
        where reason.Position is not null
        select new Attention(AttentionKind.CannotSail, finding.Boat, finding.DisplayName(), finding.Registered?.Dock, reason.Position, reason.Sentence, true)
        {
            ReleasedBy = reason.ReleasedBy,
        };

    /// <summary>What releases a boat whose records are held.</summary>
    public const string Registration = "Its registration.";

    private static IEnumerable<HireReason> Held(BoatFinding finding)
    {
        if (finding is { Registered: null, Held: > 0 })
            yield return new HireReason(HireWord.LookFirst, null, "It is not registered, so nobody can say what belongs on it.", Registration);
    }

    private static IEnumerable<HireReason> At(PositionFinding position)
    {
        // An engine takes its prop along, so that the prop is asked for once the engine hangs.
        if (position.EngineOffOn is { } engineOff)
            yield return new HireReason(HireWord.Out, position.Position, $"No engine on since {engineOff:yyyy-MM-dd}.", "An engine hung, with its prop fitted, and both recorded.");
        else if (position.PropOffOn is { } propOff)
            yield return new HireReason(HireWord.Out, position.Position, $"No prop on since {propOff:yyyy-MM-dd}.", "A prop fitted and recorded.");
        else if (position.Mounting is null)
            yield return new HireReason(HireWord.LookFirst, position.Position, "Nobody recorded which prop is on.", "A look at which prop is on, recorded as found fitted.");
    }

    private static IEnumerable<HireReason> Relaunched(BoatFinding finding, PositionFinding position, FleetPolicy policy)
    {
        if (finding is not { Registered: { } card, LayUp: { RelaunchedOn: { } on } layUp }) yield break;
        var asked = policy.Rules.Where(r => r is { Trigger: DutyTrigger.Relaunch, DoneBy: DutyDoneBy.Inspection } && r.Applies(card.Water, card.Dock, position.Mounting?.Prop.Material));
        if (asked.Any(r => DueByEvent.Relaunch(layUp, position, r).Any()))
            yield return new HireReason(HireWord.LookFirst, position.Position, $"Relaunched on {on:yyyy-MM-dd} without the look that was due before it.", "A look at prop and shaft, recorded as an inspection.");
    }
}
