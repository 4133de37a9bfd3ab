using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>What is due because something happened: at once, and until it is seen to.</summary>
internal static class DueByEvent
{
    /// <summary>
    /// After each strike: an inspection while it is open, anything else until that is done, for a "fit" does not change
    /// the gear oil. A scuff is settled by a short look where the operator asks for no more.
    /// </summary>
    public static IEnumerable<Due> Strike(BoatCard card, PositionFinding position, InspectionRule rule, HireTable table)
    {
        // A rule for one material asks what was struck, whatever is fitted now; the present prop speaks only where nobody knows.
        bool Asks(PropMaterial? struck) => rule.Applies(card.Water, card.Dock, struck ?? position.Mounting?.Prop.Material);
        bool Settled(StrikeSeverity severity, PropMaterial? material) => severity == StrikeSeverity.Scuffed && table.Of(severity, material) != HireWord.Out;
        Due After(Guid entry, DateOnly on, StrikeSeverity severity, string why) =>
            new(DutyKind.AfterStrikeInspection, rule.Id, rule.Name, rule.DoneBy, Due.NotBefore(rule, on), $"{why} on {on:yyyy-MM-dd} ({Words.Prose(severity)})")
            {
                TakenBy = Due.Taker(position, rule, on),
                Strike = entry,
            };

        if (rule.DoneBy != DutyDoneBy.Inspection)
        {
            foreach (var strike in position.Struck.Where(s => Asks(s.Material) && !Due.Did(s.DoneSince, rule)))
            {
                // What was cleared before the operator had the rule is not gone back to.
                var open = position.OpenStrikes.FirstOrDefault(o => o.Entry == strike.Entry);
                if (open is null ? strike.On < rule.Since || Settled(strike.Severity, strike.Material) : open.LookedOverOn is not null && Settled(open.Severity, open.Material)) continue;
                yield return After(strike.Entry, strike.On, strike.Severity, "strike");
            }

            yield break;
        }

        foreach (var strike in position.OpenStrikes.Where(s => Asks(s.Material) && (s.LookedOverOn is null || !Settled(s.Severity, s.Material))))
            yield return After(strike.Entry, strike.On, strike.Severity, "strike");
        foreach (var carried in position.Carried.Where(c => c.Severity is not (null or StrikeSeverity.NoMark) && Asks(c.Material) && (c.LookedOverOn is null || !Settled(c.Severity.Value, c.Material))))
            yield return After(carried.Entry, carried.On, carried.Severity!.Value, $"{carried.Thing} was struck on {carried.From}");
    }

    /// <summary>After the first outing of the present mounting; the re-torque only where the engine's fastening asks for one, or nobody said.</summary>
    public static IEnumerable<Due> FirstOuting(PositionFinding position, InspectionRule rule)
    {
        if (position is not { Mounting: { } mounting, FirstOutingOn: { } outing }) yield break;
        var done = rule.DoneBy == DutyDoneBy.Retorque
            ? position.RetorqueSeenTo || position.Engine?.Retorque == false
            : Due.Did(position.DoneSinceOuting, rule);
        if (done) yield break;
        var pin = rule.DoneBy == DutyDoneBy.Retorque ? Renewed(position.Engine?.Fastening) : "";
        yield return new Due(
            DutyKind.FirstOutingRetorque, rule.Id, rule.Name, rule.DoneBy, Due.NotBefore(rule, outing),
            $"{mounting.Prop.Prop} fitted on {mounting.FittedOn:yyyy-MM-dd}, first out on {outing:yyyy-MM-dd}{pin}")
        {
            TakenBy = Due.Taker(position, rule, mounting.FittedOn),
        };
    }

    /// <summary>
    /// Before a boat that was laid up goes out again. It is dated by the day it is meant to go out; while nobody said
    /// when, it has no date and is not listed. One that went out without it is overdue from that day.
    /// </summary>
    public static IEnumerable<Due> Relaunch(LayUpCard? layUp, PositionFinding position, InspectionRule rule)
    {
        if (layUp is null || (layUp.RelaunchedOn ?? layUp.RelaunchOn) is not { } on) yield break;
        var done = rule.DoneBy == DutyDoneBy.Inspection ? !layUp.NotLookedAt.Contains(position.Position) : Due.Did(position.DoneSinceLayUp, rule);
        if (done) yield break;
        var went = layUp.RelaunchedOn is null ? "" : ", and it went out without";
        yield return new Due(DutyKind.BeforeRelaunch, rule.Id, rule.Name, rule.DoneBy, Due.NotBefore(rule, on), $"laid up on {layUp.On:yyyy-MM-dd}{went}")
        {
            TakenBy = Due.Taker(position, rule, layUp.On),
        };
    }

    private static string Renewed(Engines.Fastening? fastening) => fastening switch
    {
        Engines.Fastening.CastleNutCotterPin => "; new cotter pin",
        Engines.Fastening.TabWasher => "; new tab washer",
        _ => "",
    };
}
