using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Policies;

/// <summary>The operator set a rule by which something is due. It replaces the rule of this id as a whole.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Name">What is due, for people.</param>
/// <param name="Trigger">What starts its clock.</param>
/// <param name="Months">Calendar months until it is due.</param>
/// <param name="Hours">Engine hours until it is due [h].</param>
/// <param name="DoneBy">Which record does it.</param>
/// <param name="Water">Applies to boats in this water only; null for all.</param>
/// <param name="Material">Applies to props of this material only; null for all.</param>
/// <param name="Dock">Applies to boats of this dock only; null for all.</param>
/// <param name="Off">It is switched off.</param>
[StoredAs("inspection_rule_set", 1)]
public sealed record InspectionRuleSet(
    Entry Entry,
    string Rule,
    string Name,
    DutyTrigger Trigger,
    int? Months,
    double? Hours,
    DutyDoneBy DoneBy,
    WaterType? Water,
    PropMaterial? Material,
    string? Dock,
    bool Off) : IFact;

/// <summary>Sets a rule by which something is due.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Rule">Id of the rule; one that is set already is replaced as a whole.</param>
/// <param name="Name">What is due, in few words, e.g. "grease the prop shaft".</param>
/// <param name="Trigger">What starts its clock.</param>
/// <param name="DoneBy">Which record does it.</param>
/// <param name="Months">Calendar months until it is due, 1 to 60; with "interval" only.</param>
/// <param name="Hours">Engine hours until it is due [h], 1 to 2000; with "interval" only. With both, whichever comes first.</param>
/// <param name="Water">Applies to boats in this water only.</param>
/// <param name="Material">Applies to props of this material only.</param>
/// <param name="Dock">Applies to boats of this dock only.</param>
/// <param name="Off">True switches the rule off.</param>
public sealed record SetInspectionRule(
    Stamp? Entry,
    string? Rule,
    string? Name,
    [property: OneOf(typeof(DutyTrigger))] string? Trigger,
    [property: OneOf(typeof(DutyDoneBy))] string? DoneBy,
    int? Months = null,
    double? Hours = null,
    [property: OneOf(typeof(WaterType))] string? Water = null,
    [property: OneOf(typeof(PropMaterial))] string? Material = null,
    string? Dock = null,
    bool? Off = null) : ICommand<SetInspectionRule>
{
    /// <inheritdoc/>
    public static string Kind => "inspection_rule_set";

    /// <inheritdoc/>
    public static SetInspectionRule Example => new(Examples.At(309, "2026-05-01T07:00:00"), "grease-shaft", "grease the prop shaft", "interval", "duty_done", 2, 60, "salt");

    /// <inheritdoc/>
    public static string Summary => "Sets a rule of the operator by which something is due, or switches one off.";

    /// <inheritdoc/>
    public static Decision Decide(SetInspectionRule command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var rule = check.Id(command.Rule, "/rule");
        var name = check.Name(command.Name, "/name");
        var trigger = check.OneOf<DutyTrigger>(command.Trigger, "/trigger");
        var doneBy = check.OneOf<DutyDoneBy>(command.DoneBy, "/doneBy");
        var months = check.MaybeWhole(command.Months, "/months", 1, 60, "months");
        var hours = check.Maybe(command.Hours, "/hours", 1, 2000, "h");
        if (command.Trigger == Words.Of(DutyTrigger.Interval))
        {
            if (months is null && hours is null) check.Refuse("/months", "no_interval", "an interval needs months, hours or both: give at least one");
        }
        else if (command.Trigger is not null && (months ?? hours) is not null)
        {
            check.Refuse(months is null ? "/hours" : "/months", "not_an_interval", "months and hours stand with \"interval\" only: after a strike, a first outing or a lay-up it is due at once");
        }

        var water = check.MaybeOneOf<WaterType>(command.Water, "/water");
        var material = check.MaybeOneOf<PropMaterial>(command.Material, "/material");
        var dock = check.MaybeId(command.Dock, "/dock");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Operator, new InspectionRuleSet(entry!, rule, name, trigger, months, hours, doneBy, water, material, dock, command.Off ?? false))],
            []));
    }
}
