using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Policies;

namespace FleetWake.Logbook.Findings;

/// <summary>What is due some months or engine hours after it was last done, whichever comes first.</summary>
internal static class DueByInterval
{
    public static IEnumerable<Due> Of(PositionFinding position, InspectionRule rule)
    {
        if (Start(position, rule) is not { } start) yield break;
        var byMonths = rule.Months is { } months ? start.On.AddMonths(months) : (DateOnly?)null;
        var byHours = rule.Hours is { } hours ? ByHours(position, start, hours) : null;
        if ((byMonths ?? byHours?.On) is not { } either) yield break;
        var on = byHours?.On < either ? byHours.Value.On : either;
        yield return new Due(
            rule.Id == Outlook.RegularLook ? DutyKind.SixMonthlyInspection : DutyKind.OwnRule, rule.Id, rule.Name, rule.DoneBy, Due.NotBefore(rule, on), Why(rule, start, byHours))
        {
            TakenBy = Due.Taker(position, rule),
            HoursLeft = byHours?.Left,
            Bridged = byHours is not null && start.Bridged,
        };
    }

    /// <summary>
    /// When the clock began: the last time it was done. What was never done runs from the day the engine was hung, a
    /// re-torque from the fitting of the prop. The date of the last look is the finding's own, for it stands in lists beside this one.
    /// </summary>
    private static Start? Start(PositionFinding position, InspectionRule rule)
    {
        var done = Due.LastDone(position, rule);
        if (rule.DoneBy == DutyDoneBy.Inspection)
            return position.LookedAtOn is { } looked ? new Start(looked, (done ?? position.Began)?.Hours, (done ?? position.Began)?.Bridged ?? false, done is not null) : null;
        if (rule.DoneBy == DutyDoneBy.Retorque)
        {
            if (position.Mounting is not { } mounting) return null;
            if (done is null || done.On < mounting.FittedOn)
                return new Start(mounting.FittedOn, position.Fitted?.Hours ?? mounting.FittedAtHours, position.Fitted?.Bridged ?? false, false);
        }

        var from = done ?? position.Began;
        return from is null ? null : new Start(from.On, from.Hours, from.Bridged, done is not null);
    }

    /// <summary>
    /// Hours left by the last reading, and the earliest plausible date on which they are used up. When a reading says
    /// that they are, that day lies between the start and the reading. What is left while the boat lies still has no date by hours.
    /// </summary>
    private static (DateOnly On, double Left)? ByHours(PositionFinding position, Start start, double hours)
    {
        if (start.Hours is not { } from || position.Use is not { } use || use.Hours < from) return null;
        var left = from + hours - use.Hours;
        if (left > 0) return use.HoursPerDay > 0 ? (Later(use.ReadOn, left / use.HoursPerDay), left) : null;
        var span = Math.Max(use.ShownOn.DayNumber - start.On.DayNumber, 0);
        return (start.On.AddDays((int)(span * (hours / (use.Hours - from)))), left);
    }

    private static DateOnly Later(DateOnly from, double days) =>
        days < DateOnly.MaxValue.DayNumber - from.DayNumber ? from.AddDays((int)days) : DateOnly.MaxValue;

    private static string Why(InspectionRule rule, Start start, (DateOnly On, double Left)? byHours)
    {
        var since = rule.DoneBy == DutyDoneBy.Inspection && start.Done ? $"prop and shaft last looked at on {start.On:yyyy-MM-dd}"
            : rule.DoneBy == DutyDoneBy.Inspection ? $"no look at prop and shaft on record since {start.On:yyyy-MM-dd}"
            : start.Done ? $"last done on {start.On:yyyy-MM-dd}"
            : $"not done since {start.On:yyyy-MM-dd}";
        return byHours is not { } h ? since
            : h.Left > 0 ? $"{since}; about {h.Left:0} engine hours left"
            : $"{since}; {-h.Left:0} engine hours over {rule.Hours:0.#}";
    }
}

/// <summary>What the clock of an interval began with.</summary>
internal sealed record Start(DateOnly On, double? Hours, bool Bridged, bool Done);
