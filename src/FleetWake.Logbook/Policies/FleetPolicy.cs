using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Policies;

/// <summary>
/// What an operator has settled for its fleet: inspection rules and hire-state table. What nobody set is as usual in
/// the trade. It is applied when a finding is looked at and never stored with it, so a changed rule needs no new finding.
/// </summary>
/// <param name="Rules">When something is due.</param>
/// <param name="Hire">Which strikes and verdicts keep a boat out of hire.</param>
public sealed record FleetPolicy(IReadOnlyList<InspectionRule> Rules, HireTable Hire)
{
    /// <summary>The policy of an operator that set nothing. Common practice, no source.</summary>
    public static FleetPolicy Usual { get; } = new(InspectionRule.Usual, HireTable.Usual);

    /// <summary>The policy that an operator's own log tells; later settings replace earlier ones of the same name.</summary>
    /// <param name="operatorLog">The log of the operator's stream.</param>
    public static FleetPolicy Of(FactLog operatorLog)
    {
        var facts = Effective.Of(operatorLog.Facts).Facts;
        var rules = InspectionRule.Usual.ToList();
        foreach (var set in facts.OfType<InspectionRuleSet>())
        {
            var at = rules.FindIndex(r => r.Id == set.Rule);
            var rule = InspectionRule.Of(set) with { Since = at < 0 ? set.Entry.Date() : rules[at].Since };
            if (at < 0) rules.Add(rule);
            else rules[at] = rule;
        }

        var table = facts.OfType<HireStatesSet>().LastOrDefault();
        return new FleetPolicy(rules, table is null ? HireTable.Usual : new HireTable([.. table.Rows, .. HireTable.Usual.Rows]));
    }
}
