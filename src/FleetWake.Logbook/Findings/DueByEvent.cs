using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>What is due because something happened: at once, and until it is seen to.</summary>
internal static class DueByEvent
{
    /// <summary>After each strike that is open. A scuff is settled by a short look where the operator asks for no more.</summary>
    public static IEnumerable<Due> Strike(PositionFinding position, InspectionRule rule, HireTable table)
    {
        foreach (var strike in position.OpenStrikes)
        {
            if (strike.LookedOverOn is not null && table.Of(strike.Severity, strike.Material) != HireWord.Out) continue;
            if (rule.DoneBy != DutyDoneBy.Inspection && Due.LastDone(position, rule)?.On >= strike.On) continue;
            yield return new Due(
                DutyKind.AfterStrikeInspection, rule.Id, rule.Name, rule.DoneBy, Due.NotBefore(rule, strike.On), $"strike on {strike.On:yyyy-MM-dd} ({Words.Prose(strike.Severity)})")
            {
                TakenBy = Due.Taker(position, rule, strike.On),
                Strike = strike.Entry,
            };
        }

        foreach (var carried in position.Carried.Where(c => c.Severity is not (null or StrikeSeverity.NoMark)))
        {
            if (rule.DoneBy != DutyDoneBy.Inspection) continue;
            if (carried.LookedOverOn is not null && table.Of(carried.Severity!.Value, carried.Material) != HireWord.Out) continue;
            yield return new Due(
                DutyKind.AfterStrikeInspection, rule.Id, rule.Name, rule.DoneBy, Due.NotBefore(rule, carried.On),
                $"{carried.Thing} was struck on {carried.From} on {carried.On:yyyy-MM-dd} ({Words.Prose(carried.Severity!)})")
            {
                TakenBy = Due.Taker(position, rule, carried.On),
                Strike = carried.Entry,
            };
        }
    }

    /// <summary>After the first outing of the present mounting; the re-torque only where the engine's fastening asks for one, or nobody said.</summary>
    public static IEnumerable<Due> FirstOuting(PositionFinding position, InspectionRule rule)
    {
        if (position is not { Mounting: { } mounting, FirstOutingOn: { } outing }) yield break;
        var done = rule.DoneBy == DutyDoneBy.Retorque
            ? position.RetorqueSeenTo || position.Engine?.Retorque == false
            : Due.LastDone(position, rule)?.On is { } last && last >= outing && last > mounting.FittedOn;
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
        var done = rule.DoneBy == DutyDoneBy.Inspection ? !layUp.NotLookedAt.Contains(position.Position) : Due.LastDone(position, rule)?.On >= layUp.On;
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
