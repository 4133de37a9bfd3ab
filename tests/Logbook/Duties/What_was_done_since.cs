using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Tests.Policies;

namespace FleetWake.Logbook.Tests.Duties;

public class What_was_done_since
{
    private static readonly DateOnly s_day = new(2026, 6, 1);

    private static readonly SetInspectionRule s_oil =
        new(Dock.At("2026-01-01T08:00", "rule"), "oil", "change the gear oil", "strike", "duty_done");

    [Fact]
    public void A_duty_done_before_the_strike_of_the_same_day_is_not_done_after_it()
    {
        var struck = Dock.OneBoat().With(Dock.Strike("2026-02-01T15:00"));
        Assert.Single(Own(struck.With(Done("2026-02-01T09:00")), s_oil));
        Assert.Empty(Own(struck.With(Done("2026-02-01T16:00")), s_oil));
        Assert.Single(Own(struck.With(Done("2026-02-01T16:00", "other")), s_oil));
    }

    [Fact]
    public void Neither_is_one_done_before_the_lay_up_or_the_outing_of_the_same_day()
    {
        var relaunch = s_oil with { Trigger = "relaunch" };
        var laidUp = Dock.OneBoat().With(new LayUp(Dock.At("2026-04-01T15:00", "up"), "kea", "2026-05-15"));
        Assert.Single(Own(laidUp.With(Done("2026-04-01T09:00")), relaunch));
        Assert.Empty(Own(laidUp.With(Done("2026-04-01T16:00")), relaunch));

        var outing = s_oil with { Trigger = "first_outing" };
        var tried = Dock.OneBoat().With(Dock.Trial("2026-02-01T15:00", 5500));
        Assert.Single(Own(tried.With(Done("2026-02-01T09:00")), outing));
        Assert.Empty(Own(tried.With(Done("2026-02-01T16:00")), outing));
    }

    [Fact]
    public void What_an_own_rule_asks_for_after_a_strike_outlives_the_fit_and_is_done_by_its_own_record()
    {
        var cleared = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00"), Dock.Look("2026-02-01T12:00"));
        var due = Assert.Single(Own(cleared, s_oil));
        Assert.Equal((new DateOnly(2026, 2, 1), "strike on 2026-02-01 (bent)"), (due.DueOn, due.Why));
        Assert.Empty(Own(cleared.With(Done("2026-02-02T10:00")), s_oil));

        var service = s_oil with { DoneBy = "service" };
        Assert.Single(Own(cleared, service));
        Assert.Empty(Own(cleared.With(new ServiceEngine(Dock.At("2026-02-02T10:00", "service"), "e1", ["gear_oil"])), service));
    }

    [Fact]
    public void What_was_cleared_is_not_gone_back_to_for_a_scuff_for_a_later_rule_or_for_another_engine()
    {
        var scuffed = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", "scuffed"), Dock.Look("2026-02-01T12:00"));
        Assert.Empty(Own(scuffed, s_oil));
        var cleared = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00"), Dock.Look("2026-02-01T12:00"));
        Assert.Empty(Own(cleared, s_oil with { Entry = Dock.At("2026-03-01T08:00", "later") }));
        Assert.Empty(Own(cleared.With(Dock.Fitted("2026-03-01T10:00", "e2")), s_oil));
    }

    [Fact]
    public void A_rule_for_one_material_asks_what_was_struck_and_not_what_is_fitted_now()
    {
        var stainless = s_oil with { Material = "stainless" };
        var steel = Dock.OneBoat().With(
            Dock.Prop(prop: "p2") with { Material = "stainless" }, Dock.Mounted("2026-01-20T09:00", "p2"), Dock.Strike("2026-02-01T10:00"), Dock.Mounted("2026-02-02T10:00"));
        Assert.Single(Own(steel, stainless));
        Assert.Single(Own(steel, stainless with { DoneBy = "inspection" }));
        var other = Dock.OneBoat().With(
            Dock.Strike("2026-02-01T10:00"), Dock.Prop(prop: "p2") with { Material = "stainless" }, Dock.Mounted("2026-02-02T09:00", "p2"));
        Assert.Empty(Own(other, stainless));
    }

    [Fact]
    public void A_re_torque_between_the_fitting_and_a_first_outing_of_known_date_does_not_do_it()
    {
        var early = Dock.OneBoat().With(Retorque("2026-01-06T10:00"));
        Assert.False(SeenTo(early.With(Dock.Trial("2026-02-01T10:00", 5500))));
        Assert.True(SeenTo(early.With(Dock.Trial("2026-02-01T10:00", 5500), Retorque("2026-02-01T11:00"))));
        Assert.True(SeenTo(early.With(Dock.Hours("2026-02-04T09:00", 130)))); // when it was out, nobody knows
        Assert.True(SeenTo(early));
    }

    [Fact]
    public void A_fit_does_it_only_where_the_nut_was_in_view()
    {
        var tried = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500));
        Assert.False(SeenTo(tried.With(Dock.Look("2026-02-02T10:00") with { Seen = ["gear_oil"] })));
        Assert.True(SeenTo(tried.With(Dock.Look("2026-02-02T10:00") with { Seen = ["prop", "gear_oil"] })));
    }

    [Fact]
    public void A_strike_is_a_sign_of_an_outing()
    {
        var struck = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", "no_mark"));
        Assert.Equal(new DateOnly(2026, 2, 1), struck.Finding().Positions.Single().FirstOutingOn);
        Assert.Contains(Outlook.Of(struck.Finding(), s_day), d => d.Kind == DutyKind.FirstOutingRetorque);
    }

    private static DoDuty Done(string time, string rule = "oil") => new(Dock.At(time, $"done {rule} {time}"), "kea", rule);

    private static RetorqueNut Retorque(string time) => new(Dock.At(time, "retorque " + time), "kea", "single");

    private static bool SeenTo(Fleet fleet) => fleet.Finding().Positions.Single().RetorqueSeenTo;

    private static List<DueItem> Own(Fleet fleet, SetInspectionRule rule) =>
        [.. Outlook.Of(fleet.Finding(), s_day, Setting_a_policy.Policy(rule)).Where(d => d.RuleId == "oil")];
}
