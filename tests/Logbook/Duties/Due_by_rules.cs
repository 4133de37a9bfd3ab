using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Tests.Policies;

namespace FleetWake.Logbook.Tests.Duties;

public class Due_by_rules
{
    private static readonly DateOnly s_day = new(2026, 6, 1);

    private static readonly FleetPolicy s_hourly = Setting_a_policy.Policy(
        new SetInspectionRule(Dock.At("2026-01-01T08:00", "hourly"), "oil", "look at the gear oil", "interval", "duty_done", null, 60));

    private static readonly Fleet s_used = Dock.OneBoat().With(Dock.Hours("2026-02-04T09:00", 130), Dock.Hours("2026-03-06T09:00", 145));

    [Fact]
    public void Hours_are_due_on_the_earliest_date_that_the_readings_make_plausible()
    {
        // 100 h on 5 January, 130 h on 4 February, 145 h on 6 March: 0.75 h a day in all, and no later stretch was faster.
        var due = Own(s_used, s_hourly);
        Assert.Equal((15.0, new DateOnly(2026, 3, 26)), (due.HoursLeft!.Value, due.DueOn));
        Assert.Equal("not done since 2026-01-05; about 15 engine hours left", due.Why);
        Assert.False(due.Bridged);
    }

    [Fact]
    public void Hours_that_are_used_up_were_due_between_the_readings()
    {
        var due = Own(s_used.With(Dock.Hours("2026-04-05T09:00", 220)), s_hourly);
        Assert.Equal((-60.0, new DateOnly(2026, 2, 19)), (due.HoursLeft!.Value, due.DueOn)); // half of 120 h in half of 90 days
        Assert.Contains("60 engine hours over 60", due.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_done_starts_the_clock_anew_and_hours_nobody_read_are_bridged()
    {
        var due = Own(s_used.With(new DoDuty(Dock.At("2026-02-19T09:00", "done"), "kea", "oil")), s_hourly);
        Assert.True(due.Bridged);
        Assert.Equal(45, due.HoursLeft!.Value, 6); // half-way between 130 and 145 h, and reckoned from the earlier
        Assert.StartsWith("last done on 2026-02-19", due.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Hours_that_are_used_up_stay_due_while_the_boat_lies_still()
    {
        var still = Dock.OneBoat().With(Dock.Hours("2026-10-12T09:00", 170), Dock.Hours("2027-04-10T09:00", 170));
        var due = Own(still, s_hourly);
        Assert.Equal((-10.0, new DateOnly(2026, 9, 2)), (due.HoursLeft!.Value, due.DueOn)); // 60 of 70 h in 240 of the 280 days to October
        Assert.Equal("not done since 2026-01-05; 10 engine hours over 60", due.Why);

        // What is left has no date by hours while nothing runs; months have one.
        var left = Dock.OneBoat().With(Dock.Hours("2026-10-12T09:00", 150), Dock.Hours("2027-04-10T09:00", 150));
        Assert.DoesNotContain(Outlook.Of(left.Finding(), s_day, s_hourly), d => d.Kind == DutyKind.OwnRule);
        var both = Setting_a_policy.Policy(new SetInspectionRule(Dock.At("2026-01-01T08:00", "both"), "oil", "look at the gear oil", "interval", "duty_done", 6, 60));
        Assert.Equal(new DateOnly(2026, 7, 5), Own(left, both).DueOn);
    }

    [Fact]
    public void A_re_torque_by_hours_runs_from_the_reading_before_the_fitting()
    {
        var again = Setting_a_policy.Policy(new SetInspectionRule(Dock.At("2026-01-01T08:00", "nut"), "nut", "re-torque", "interval", "retorque", null, 50));
        var due = Own(s_used.With(Dock.Mounted("2026-02-19T09:00")), again);
        Assert.Equal((35.0, true), (due.HoursLeft!.Value, due.Bridged));
    }

    [Fact]
    public void Of_months_and_hours_the_earlier_counts()
    {
        var both = Setting_a_policy.Policy(new SetInspectionRule(Dock.At("2026-01-01T08:00", "both"), "six-monthly", "regular look", "interval", "inspection", 6, 60));
        var due = Outlook.Of(s_used.Finding(), s_day, both).Single(d => d.Kind == DutyKind.SixMonthlyInspection);
        Assert.Equal(new DateOnly(2026, 3, 26), due.DueOn);
        Assert.Equal(new DateOnly(2026, 7, 5), Outlook.Of(Dock.OneBoat().Finding(), s_day, both).Single().DueOn); // nothing says how much it runs
    }

    [Fact]
    public void Nothing_was_due_before_its_rule_was_set()
    {
        var late = Setting_a_policy.Policy(new SetInspectionRule(Dock.At("2026-05-20T08:00", "late"), "anode", "look at the anodes", "interval", "duty_done", 1));
        Assert.Equal(new DateOnly(2026, 5, 20), Own(Dock.OneBoat(), late).DueOn);
    }

    [Fact]
    public void A_rule_may_be_for_one_water_one_dock_or_one_material_and_may_be_off()
    {
        SetInspectionRule Rule(string? water = null, string? material = null, string? dock = null, bool off = false) =>
            new(Dock.At("2026-01-01T08:00", "rule"), "own", "own", "interval", "duty_done", 1, null, water, material, dock, off);
        int Count(SetInspectionRule rule) => Outlook.Of(Dock.OneBoat().Finding(), s_day, Setting_a_policy.Policy(rule)).Count(d => d.RuleId == "own");
        Assert.Equal([1, 1, 1, 1], [Count(Rule()), Count(Rule("salt")), Count(Rule(null, "aluminium")), Count(Rule(dock: "jetty"))]);
        Assert.Equal([0, 0, 0, 0], [Count(Rule("fresh")), Count(Rule(null, "stainless")), Count(Rule(dock: "quay")), Count(Rule(off: true))]);
    }

    [Fact]
    public void After_the_first_outing_the_nut_is_due_until_it_is_tightened_again()
    {
        Assert.Empty(Retorques(Dock.OneBoat()));
        var due = Assert.Single(Retorques(s_used));
        Assert.Equal((new DateOnly(2026, 2, 4), "re-torque after the first outing"), (due.DueOn, due.What));
        Assert.Single(Retorques(Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500))));
        Assert.Empty(Retorques(s_used.With(new RetorqueNut(Dock.At("2026-02-05T10:00", "again"), "kea", "single"))));
        Assert.Single(Retorques(s_used.With(new RetorqueNut(Dock.At("2026-01-05T10:00", "too soon"), "kea", "single"))));
        Assert.Empty(Retorques(s_used.With(Dock.Look("2026-02-05T10:00"))));
        Assert.Single(Retorques(s_used.With(Dock.Look("2026-02-05T10:00", "watch"))));
    }

    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    [InlineData(null, 1)]
    public void The_engines_fastening_says_whether_a_re_torque_applies(bool? applies, int due)
    {
        var stated = s_used.With(new StateFastening(Dock.At("2026-01-05T08:30", "fastening"), "e1", "castle_nut_cotter_pin", Retorque: applies));
        Assert.Equal(due, Retorques(stated).Count);
        Assert.All(Retorques(stated), d => Assert.EndsWith("; new cotter pin", d.Why, StringComparison.Ordinal));
    }

    [Fact]
    public void A_boat_that_is_laid_up_is_asked_for_one_thing()
    {
        var laidUp = s_used.With(Dock.Strike("2026-03-10T10:00"), new LayUp(Dock.At("2026-04-01T10:00", "up"), "kea", "2026-09-15"));
        var due = Assert.Single(Outlook.Of(laidUp.Finding(), new DateOnly(2026, 12, 1)));
        Assert.Equal((DutyKind.BeforeRelaunch, new DateOnly(2026, 9, 15)), (due.Kind, due.DueOn));
        Assert.Empty(Outlook.Of(laidUp.With(Dock.Look("2026-09-01T10:00")).Finding(), s_day));
        Assert.Empty(Outlook.Of(s_used.With(new LayUp(Dock.At("2026-04-01T10:00", "up"), "kea")).Finding(), s_day));
    }

    [Fact]
    public void One_that_went_out_without_a_look_is_overdue_from_that_day()
    {
        var went = Dock.OneBoat().With(new LayUp(Dock.At("2026-04-01T10:00", "up"), "kea", "2026-09-15"), new RelaunchBoat(Dock.At("2026-08-20T10:00", "down"), "kea"));
        var due = Assert.Single(Outlook.Of(went.Finding(), new DateOnly(2026, 8, 21)));
        Assert.Equal((DutyKind.BeforeRelaunch, 1, "laid up on 2026-04-01, and it went out without"), (due.Kind, due.DaysOverdue, due.Why));
        Assert.Equal([DutyKind.SixMonthlyInspection], Outlook.Of(went.With(Dock.Look("2026-08-21T10:00")).Finding(), s_day).Select(d => d.Kind));
    }

    [Fact]
    public void A_boat_that_left_the_fleet_owes_nothing() =>
        Assert.Empty(Outlook.Of(s_used.With(Dock.Strike("2026-03-10T10:00"), new RetireBoat(Dock.At("2026-04-01T10:00", "gone"), "kea", "sold")).Finding(), s_day));

    [Fact]
    public void A_claim_is_due_by_its_deadline_until_it_is_closed()
    {
        var claim = Dock.OneBoat().With(new OpenClaim(Dock.At("2026-03-10T10:00", "claim"), "kea", "single", "hire-7", Deadline: "2026-04-10"));
        var due = Outlook.Of(claim.Finding(), s_day).Single(d => d.Kind == DutyKind.ClaimDeadline);
        Assert.Equal((new DateOnly(2026, 4, 10), "deadline of the claim from hire hire-7"), (due.DueOn, due.Why));
        var closed = claim.With(new CloseClaim(Dock.At("2026-04-01T10:00", "closed"), "kea", Dock.Id("claim"), "waived"));
        Assert.DoesNotContain(Outlook.Of(closed.Finding(), s_day), d => d.Kind == DutyKind.ClaimDeadline);
    }

    [Fact]
    public void Whoever_took_a_duty_is_named_until_it_is_done()
    {
        var taken = Dock.OneBoat().With(new TakeDuty(Dock.At("2026-06-01T08:00", "mine"), "kea", "six-monthly"));
        Assert.Equal("mech-1", Outlook.Of(taken.Finding(), s_day).Single().TakenBy);
        Assert.Null(Outlook.Of(taken.With(Dock.Look("2026-06-01T12:00")).Finding(), s_day).Single().TakenBy);
    }

    [Fact]
    public void A_scuff_that_somebody_looked_at_is_no_longer_due()
    {
        var scuffed = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", "scuffed"));
        Assert.Contains(Outlook.Of(scuffed.Finding(), s_day), d => d.Kind == DutyKind.AfterStrikeInspection);
        Assert.DoesNotContain(Outlook.Of(scuffed.With(Hire.States_of_hire.Short("2026-02-01T11:00", "mark")).Finding(), s_day), d => d.Kind == DutyKind.AfterStrikeInspection);
    }

    private static DueItem Own(Fleet fleet, FleetPolicy policy) => Outlook.Of(fleet.Finding(), s_day, policy).Single(d => d.Kind == DutyKind.OwnRule);

    private static List<DueItem> Retorques(Fleet fleet) => [.. Outlook.Of(fleet.Finding(), s_day).Where(d => d.Kind == DutyKind.FirstOutingRetorque)];
}
