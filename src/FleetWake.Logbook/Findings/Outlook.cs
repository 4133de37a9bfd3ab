using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Policies;

namespace FleetWake.Logbook.Findings;

/// <summary>What of a finding depends on the day.</summary>
public static class Outlook
{
    /// <summary>Months between two looks at prop and shaft. Common practice, no source; the owner's manual wins.</summary>
    public const int InspectionMonths = 6;

    /// <summary>Id of the regular look at prop and shaft among the rules.</summary>
    public const string RegularLook = "six-monthly";

    /// <summary>
    /// Everything due on a boat, most overdue first. A boat that is laid up is left in peace but for the look before it
    /// goes out again; one that left the fleet is left in peace for good. A claim runs out whatever the boat does.
    /// </summary>
    /// <param name="finding">The finding.</param>
    /// <param name="day">The day, in the calendar of the boat's dock.</param>
    /// <param name="policy">The operator's policy; the usual one when left out.</param>
    public static IReadOnlyList<DueItem> Of(BoatFinding finding, DateOnly day, FleetPolicy? policy = null)
    {
        if (finding.Registered is not { } card) return [];
        return
        [
            .. finding.Positions
                .SelectMany(p => Due(finding, card, p, policy ?? FleetPolicy.Usual).Select(d => (Due: d, p.Position)))
                .Concat(finding.ClaimsDue.Select(c => (Due: Claim(c), c.Position)))
                .Select(x => new DueItem(x.Due.Kind, finding.Boat, card.Name, card.Dock, x.Position, x.Due.On, day.DayNumber - x.Due.On.DayNumber, x.Due.Why)
                {
                    RuleId = x.Due.Rule,
                    What = x.Due.What,
                    TakenBy = x.Due.TakenBy,
                    HoursLeft = x.Due.HoursLeft,
                    Bridged = x.Due.Bridged,
                    Strike = x.Due.Strike,
                })
                .OrderBy(d => d.DueOn).ThenBy(d => d.Kind).ThenBy(d => d.Position).ThenBy(d => d.RuleId, StringComparer.Ordinal),
        ];
    }

    /// <summary>
    /// The date some months on, in calendar months: 31 August and six months is the last day of February.
    /// Always reckoned from the day of the last look, so that a clamped month-end does not creep.
    /// </summary>
    public static DateOnly InspectionDue(DateOnly lookedAtOn) => lookedAtOn.AddMonths(InspectionMonths);

    private static IEnumerable<Due> Due(BoatFinding finding, BoatCard card, PositionFinding position, FleetPolicy policy)
    {
        if (finding.Retired is not null) return [];
        var struck = policy.Rules.Where(r => r.Trigger == DutyTrigger.Strike);
        var rules = policy.Rules.Where(r => r.Applies(card.Water, card.Dock, position.Mounting?.Prop.Material)).ToList();
        var relaunch = rules.Where(r => r.Trigger == DutyTrigger.Relaunch).SelectMany(r => DueByEvent.Relaunch(finding.LayUp, position, r)).ToList();
        if (finding.IsLaidUp()) return relaunch;

        // The look before relaunch is the regular look too: it is asked for once.
        var looked = relaunch.All(d => d.DoneBy != DutyDoneBy.Inspection);
        return relaunch
            .Concat(struck.SelectMany(r => DueByEvent.Strike(card, position, r, policy.Hire)))
            .Concat(rules.Where(r => r.Trigger == DutyTrigger.FirstOuting).SelectMany(r => DueByEvent.FirstOuting(position, r)))
            .Concat(rules.Where(r => r.Trigger == DutyTrigger.Interval && (looked || r.DoneBy != DutyDoneBy.Inspection)).SelectMany(r => DueByInterval.Of(position, r)));
    }

    private static Due Claim(ClaimDue claim) => new(
        DutyKind.ClaimDeadline, claim.Claim.ToString(), "close the claim or send it in", DutyDoneBy.DutyDone, claim.Deadline, $"deadline of the claim from hire {claim.Hire}");
}

/// <summary>Something due at a position, by whatever calls for it.</summary>
internal sealed record Due(DutyKind Kind, string Rule, string What, DutyDoneBy DoneBy, DateOnly On, string Why)
{
    public string? TakenBy { get; init; }

    public double? HoursLeft { get; init; }

    public bool Bridged { get; init; }

    public Guid? Strike { get; init; }

    /// <summary>Who took it, unless that was before it became due again.</summary>
    public static string? Taker(PositionFinding position, InspectionRule rule, DateOnly? since = null) =>
        position.Taken.FirstOrDefault(t => t.Rule == rule.Id && !t.DoneSince.Contains(rule.DoneBy) && !(t.On < since))?.By;

    /// <summary>Nothing was due by a rule before the operator had it.</summary>
    public static DateOnly NotBefore(InspectionRule rule, DateOnly on) => rule.Since > on ? rule.Since.Value : on;

    /// <summary>Whether what does a duty is among what was done.</summary>
    public static bool Did(IReadOnlyList<DoneThing> done, InspectionRule rule) => done.Any(d => d.By == rule.DoneBy && (d.Rule is null || d.Rule == rule.Id));

    public static Doing? LastDone(PositionFinding position, InspectionRule rule) =>
        position.Doings.FirstOrDefault(d => d.By == rule.DoneBy && (d.Rule is null || d.Rule == rule.Id));
}
