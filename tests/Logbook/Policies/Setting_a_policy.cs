using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Tests.Policies;

public class Setting_a_policy
{
    private static readonly SetInspectionRule s_grease = new(Dock.At("2026-05-05T08:00", "rule"), "grease", "grease the shaft", "interval", "duty_done", 2, 60, "salt");

    private static readonly SetHireStates s_table = new(
        Dock.At("2026-05-05T08:00", "table"), [new("out", "scuffed", null, "stainless"), new("in_hire", "scuffed"), new("look_first", null, "watch")]);

    [Fact]
    public void A_rule_is_kept_on_the_operators_stream() => Spec.Given().When(s_grease)
        .Then(("operator", new InspectionRuleSet(
            Dock.Kept(s_grease.Entry!), "grease", "grease the shaft", DutyTrigger.Interval, 2, 60, DutyDoneBy.DutyDone, WaterType.Salt, null, null, false)))
        .Naming();

    [Fact]
    public void An_interval_has_a_length_and_nothing_else_has_one() => Spec.EachIsRefused(
        (s_grease with { Months = null, Hours = null }, "/months", "no_interval"),
        (s_grease with { Trigger = "strike" }, "/months", "not_an_interval"),
        (s_grease with { Trigger = "relaunch", Months = null }, "/hours", "not_an_interval"),
        (s_grease with { Months = 0 }, "/months", "out_of_range"),
        (s_grease with { Hours = double.NaN }, "/hours", "out_of_range"),
        (s_grease with { DoneBy = "wishing" }, "/doneBy", "unknown_word"));

    [Fact]
    public void A_row_is_about_a_strike_or_an_inspection_and_only_once() => Spec.EachIsRefused(
        (s_table with { Rows = [] }, "/rows", "too_few"),
        (s_table with { Rows = [new("out")] }, "/rows/0", "one_subject"),
        (s_table with { Rows = [new("out", "bent", "watch")] }, "/rows/0", "one_subject"),
        (s_table with { Rows = [new("out", "bent"), new("in_hire", "bent")] }, "/rows", "named_twice"),
        (s_table with { Rows = [new("in_hire", null, "take_off")] }, "/rows/0/state", "take_off_in_hire"),
        (s_table with { Rows = [new(null, "bent")] }, "/rows/0/state", "missing"));

    [Fact]
    public void A_row_that_could_never_act_is_refused() => Spec.EachIsRefused(
        (s_table with { Rows = [new("out", "no_mark")] }, "/rows/0/severity", "never_acts"),
        (s_table with { Rows = [new("out", null, "fit")] }, "/rows/0/verdict", "never_acts"),
        (s_table with { Rows = [new("in_hire", "scuffed"), new("out", "scuffed", null, "stainless")] }, "/rows/1", "never_acts"));

    [Fact]
    public void Nothing_set_is_as_usual_in_the_trade()
    {
        var policy = FleetPolicy.Of(FactLog.Empty(StreamName.Operator));
        Assert.Equal(InspectionRule.Usual, policy.Rules);
        Assert.Same(HireTable.Usual, policy.Hire);
    }

    [Fact]
    public void A_rule_of_a_known_id_replaces_it_in_its_place_and_another_is_added()
    {
        var rules = Policy(s_grease, Six(4), s_grease with { Entry = Dock.At("2026-06-05T08:00", "again"), Months = 3 }).Rules;
        Assert.Equal(["six-monthly", "after-strike", "first-outing", "before-relaunch", "grease"], rules.Select(r => r.Id));
        Assert.Equal((4, null), (rules[0].Months, rules[0].Since));
        Assert.Equal((3, new DateOnly(2026, 5, 5)), (rules[4].Months, rules[4].Since)); // since it was first set
    }

    [Fact]
    public void A_setting_taken_back_restores_the_one_before() =>
        Assert.Equal(6, Policy(Six(4), new Retract(Dock.At("2026-06-05T08:00", "back"), Dock.Id("six 4"), "typed_wrong", Office: true)).Rules[0].Months);

    [Fact]
    public void The_first_row_that_fits_counts_and_the_usual_table_where_none_does()
    {
        var table = Policy(s_table).Hire;
        Assert.Equal(HireWord.Out, table.Of(StrikeSeverity.Scuffed, PropMaterial.Stainless));
        Assert.Equal(HireWord.InHire, table.Of(StrikeSeverity.Scuffed, PropMaterial.Aluminium));
        Assert.Equal(HireWord.Out, table.Of(StrikeSeverity.Bent, PropMaterial.Aluminium));
        Assert.Equal(HireWord.LookFirst, table.Of(Verdict.Watch, null));
    }

    [Fact]
    public void Where_the_material_is_not_known_the_strictest_word_counts() => Assert.Equal(HireWord.Out, Policy(s_table).Hire.Of(StrikeSeverity.Scuffed, null));

    internal static FleetPolicy Policy(params ICommand[] records) => FleetPolicy.Of(
        records.SelectMany(r => Fleet.Accepted(r)).Aggregate(FactLog.Empty(StreamName.Operator), (log, p) => log.Evolve(p.Fact)));

    internal static SetInspectionRule Six(int months) =>
        new(Dock.At("2026-05-06T08:00", $"six {months}"), "six-monthly", "regular look", "interval", "inspection", months);
}
