using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Policies;

/// <summary>A rule by which something is due. The owner's manual wins over every rule.</summary>
/// <param name="Id">Id of the rule; setting a rule with this id again replaces it.</param>
/// <param name="Name">What is due, for people.</param>
/// <param name="Trigger">What starts its clock.</param>
/// <param name="Months">Calendar months until it is due, with <see cref="DutyTrigger.Interval"/>; null when hours alone count.</param>
/// <param name="Hours">Engine hours until it is due [h]; null when months alone count. With both, whichever comes first.</param>
/// <param name="DoneBy">Which record does it.</param>
/// <param name="Water">Applies to boats in this water only; null for all.</param>
/// <param name="Material">Applies to props of this material only; null for all.</param>
/// <param name="Dock">Applies to boats of this dock only; null for all.</param>
/// <param name="Off">The operator has switched it off.</param>
public sealed record InspectionRule(
    string Id,
    string Name,
    DutyTrigger Trigger,
    int? Months,
    double? Hours,
    DutyDoneBy DoneBy,
    WaterType? Water = null,
    PropMaterial? Material = null,
    string? Dock = null,
    bool Off = false)
{
    /// <summary>Day on which the operator first set it: nothing was due by it before. Null for the usual rules, however often they are set.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>Rules of an operator that set none. Common practice, no source; the owner's manual wins.</summary>
    public static IReadOnlyList<InspectionRule> Usual { get; } =
    [
        new("six-monthly", "six-monthly inspection", DutyTrigger.Interval, 6, null, DutyDoneBy.Inspection),
        new("after-strike", "inspection after a strike", DutyTrigger.Strike, null, null, DutyDoneBy.Inspection),
        new("first-outing", "re-torque after the first outing", DutyTrigger.FirstOuting, null, null, DutyDoneBy.Retorque),
        new("before-relaunch", "inspection before relaunch", DutyTrigger.Relaunch, null, null, DutyDoneBy.Inspection),
    ];

    /// <summary>The rule that an operator set.</summary>
    public static InspectionRule Of(InspectionRuleSet set) =>
        new(set.Rule, set.Name, set.Trigger, set.Months, set.Hours, set.DoneBy, set.Water, set.Material, set.Dock, set.Off);

    /// <summary>Whether it applies to a boat of a dock and a water, with a prop of a material; a rule for one material does not apply where none is known.</summary>
    public bool Applies(WaterType water, string dock, PropMaterial? material) =>
        !Off && (Water ?? water) == water && (Dock ?? dock) == dock && (Material is null || Material == material);
}

/// <summary>What starts the clock of a duty.</summary>
public enum DutyTrigger
{
    /// <summary>The last time it was done.</summary>
    Interval,

    /// <summary>A strike.</summary>
    Strike,

    /// <summary>The first outing of a new mounting.</summary>
    FirstOuting,

    /// <summary>A lay-up that ends.</summary>
    Relaunch,
}

/// <summary>Which record does a duty.</summary>
public enum DutyDoneBy
{
    /// <summary>An inspection, or the fitting of a prop, at which prop and shaft are seen.</summary>
    Inspection,

    /// <summary>A re-torque of the nut.</summary>
    Retorque,

    /// <summary>An engine service.</summary>
    Service,

    /// <summary>A "duty done" that names the rule.</summary>
    DutyDone,
}
