using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>
/// What of a claimed damage may be charged when the prop that was hit had run already: whoever broke an old prop owes what
/// was left of it, not a new one.
/// </summary>
/// <param name="Claim">Id of the claim.</param>
/// <param name="Prop">The prop that was hit; null when none is on record there.</param>
/// <param name="Hours">Engine hours that it had run from new when it was hit [h]; null when they are not known.</param>
/// <param name="Followed">Props of its material that were followed beyond those hours.</param>
/// <param name="Ended">How many of them were used up later.</param>
/// <param name="ShareLeft">The share of its life that was left [1]; null when it is not reckoned.</param>
/// <param name="Charged">That share of the cost told, as if all of it was paid for the prop itself; null without a cost or a share.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record ClaimCharge(Guid Claim, string? Prop, double? Hours, int Followed, int Ended, Limits? ShareLeft, Money? Charged, string Sentence)
{
    /// <summary>The charge of a claim; null when no boat of the fleet has it.</summary>
    public static ClaimCharge? Of(FleetRecord fleet, Guid claim)
    {
        var found = fleet.Boats.SelectMany(ClaimOnStrike.Of).FirstOrDefault(c => c.Card.Claim == claim);
        if (found is null) return null;
        if (found.HitMounting is not { } hit || fleet.Props.FirstOrDefault(p => p.Life.Prop == hit.Fitted.Prop) is not { } prop) return Nothing(null, null, "no prop is on record there");
        var name = prop.Life.Prop;
        if (prop.Life.Registered?.Material is not { } material) return Nothing(name, null, "the prop is not registered");
        var (life, leftOut) = PropLifetime.Of(prop, PropLifetime.Homes(fleet.Boats, fleet.Office));
        if (leftOut is not null || HoursAt(prop, found) is not { } hours || life is null || life.EngineHours < hours - 0.5)
            return Nothing(name, null, "nobody knows how many hours it had run from new");

        var (followed, ended, left) = RemainingLife.Beyond(PropLives.Lifetimes(fleet).Lives.Where(l => l.Prop != name), material, hours);
        if (left?.Hours is not { } more)
            return Nothing(name, hours, $"not enough has worn out yet to say what was left of it at {hours:0} h") with { Followed = followed, Ended = ended };
        var share = new Limits(Share(hours, more), Share(hours, left.LowHours ?? 0), left.HighHours is { } high ? Share(hours, high) : 1);
        var charged = found.Card.Cost is { } cost ? cost with { Amount = Math.Round(cost.Amount * (decimal)share.Value, 2) } : null;
        return new ClaimCharge(
            claim, name, hours, followed, ended, share, charged,
            $"Prop {name} had run {hours:0} h from new. Of {followed} props of its material that were followed beyond that, half lasted {more:0} h more: "
            + $"{100 * share.Value:0} % of its life was left ({100 * share.Low:0} to {100 * share.High:0} %, {100 * Limits.Level:0} % limits).");

        ClaimCharge Nothing(string? prop, double? hours, string why) => new(claim, prop, hours, 0, 0, null, null, $"How much of its life was left is not reckoned: {why}.");
    }

    private static double Share(double hours, double left) => hours + left > 0 ? left / (hours + left) : 1;

    /// <summary>Hours that a prop had run when it was hit [h]; null when those of a mounting are not known.</summary>
    private static double? HoursAt(PropRecord prop, ClaimOnStrike claim)
    {
        var sum = 0.0;
        foreach (var (boat, span) in prop.Mountings.TakeWhile(m => prop.Order.Compare(m.Span.Fitted.Entry, claim.Hit) <= 0))
        {
            var meter = boat.EngineOf(span) is { } engine ? boat.Meters.GetValueOrDefault(engine.Engine) : null;
            var ended = span.Holds(claim.Hit) ? claim.Hit : span.To;
            if (EngineRun.Of(meter, prop.Order, span.Fitted.Entry, ended) is { } run) sum += run.Hours;
            else if (span.To is not null && !span.Holds(claim.Hit)) return null;
        }

        return sum;
    }
}
