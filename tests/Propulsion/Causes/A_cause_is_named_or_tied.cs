using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>When one cause is named, when several stay tied, and which test would part them. Invented readings.</summary>
public class A_cause_is_named_or_tied
{
    [Fact]
    public void Much_more_resistance_is_named()
    {
        var (x, v) = Tern.Effect(Cause.HullOrLoad, 0.20);
        var finding = Diagnosis.Of(Tern.Alone(x, v));
        Assert.Equal((Cause.HullOrLoad, "tern"), (finding.Named!.Cause, finding.Named.Where));
        Assert.Equal(CauseGroup.RpmDown, finding.Group);
        Assert.InRange(finding.Named.Size.Value, 0.17, 0.22);
        Assert.Empty(finding.Tests);
    }

    [Fact]
    public void A_weak_engine_and_rough_blades_are_never_told_apart_at_full_throttle()
    {
        var (x, v) = Tern.Effect(Cause.EnginePower, 0.07);
        var finding = Diagnosis.Of(Tern.Alone(x, v, runs: 100));
        Assert.Null(finding.Named);
        Assert.Equal([Cause.EnginePower, Cause.BladeRoughness], finding.Tied.Select(s => s.Cause).Order());
        Assert.Contains(SeparatingTest.LookAtBottomAndBlades, finding.Tests);
    }

    [Fact]
    public void With_air_that_nobody_read_the_first_test_is_to_read_it()
    {
        var (x, v) = Tern.Effect(Cause.EnginePower, 0.07);
        Assert.Equal(SeparatingTest.ReadTheAir, Diagnosis.Of(Tern.Alone(x, v) with { AirUnread = true }).Tests[0]);
    }

    [Fact]
    public void Lost_pitch_and_a_slipping_hub_are_parted_by_points_at_lower_RPM()
    {
        var (x, v) = Tern.Effect(Cause.PitchOrCupLoss, 0.04);
        var alone = Tern.Alone(x, v, runs: 2);
        var tied = Diagnosis.Of(alone);
        Assert.Null(tied.Named);
        Assert.Contains(Cause.HubSlip, tied.Tied.Select(s => s.Cause));

        var c = 0.04 * CauseResponse.Of(Cause.PitchOrCupLoss, Tern.Console).LnSpeedAtRpm;
        CauseCase At(double lnSpeed) => alone with { PartThrottle = [.. Enumerable.Repeat(new PartThrottleChange("tern", "P1", new Uncertain(lnSpeed, 0.01)), 6)] };
        Assert.DoesNotContain(Cause.HubSlip, Diagnosis.Of(At(c)).Tied.Select(s => s.Cause));
        Assert.DoesNotContain(Cause.PitchOrCupLoss, Diagnosis.Of(At(0)).Tied.Select(s => s.Cause));
    }

    [Fact]
    public void A_rule_and_a_gauge_part_pitch_from_diameter()
    {
        var (x, v) = Tern.Effect(Cause.DiameterLoss, 0.025);
        Assert.Contains(SeparatingTest.Gauge, SeparatingTests.For([Cause.PitchOrCupLoss, Cause.DiameterLoss], airUnread: false));
        var measured = Diagnosis.Of(Tern.Alone(x, v) with
        {
            Gauges = [new("P1", Cause.DiameterLoss, new Uncertain(0.025, 0.003)), new("P1", Cause.PitchOrCupLoss, new Uncertain(0.001, 0.01))],
        });
        Assert.Equal(Cause.DiameterLoss, measured.Named!.Cause);
        Assert.Equal(0.025, measured.Named.Size.Value, 0.004);
    }

    /// <summary>The two cancel in RPM (computed): an RPM that did not drift proves no sound prop.</summary>
    [Fact]
    public void Pitch_loss_and_roughness_that_cancel_in_RPM_are_no_single_cause()
    {
        var (pitch, drag) = (Tern.Effect(Cause.PitchOrCupLoss, 0.06), Tern.Effect(Cause.BladeRoughness, 0.095));
        Assert.Equal(0, pitch.LnRpm + drag.LnRpm, 2e-3);
        var finding = Diagnosis.Of(Tern.Alone(pitch.LnRpm + drag.LnRpm, pitch.LnSpeed + drag.LnSpeed));
        Assert.Null(finding.Named);
        Assert.Equal(Cause.Several, finding.Suspects[0].Cause);
    }

    [Fact]
    public void Nothing_of_size_is_nothing_named()
    {
        var finding = Diagnosis.Of(Tern.Alone(0.0005, -0.001));
        Assert.Equal(Cause.None, finding.Suspects[0].Cause);
        Assert.Null(finding.Named);
    }

    [Fact]
    public void Ventilation_that_was_seen_gains_and_that_was_watched_for_in_vain_loses()
    {
        var (x, v) = Tern.Effect(Cause.Ventilation, 0.2);
        double Of(bool? seen) => Diagnosis.Of(Tern.Alone(x, v) with { VentilationSeen = seen }).Suspects.First(s => s.Cause == Cause.Ventilation).Probability;
        Assert.True(Of(true) > Of(null) && Of(null) > Of(false));
    }

    [Fact]
    public void One_wild_trial_among_eight_names_nothing()
    {
        WideOpenChange[] runs = [.. Tern.Runs("tern", "P1", 0, 0, 7), new("tern", "P1", 0.2, 0, Tern.DoubleRun)];
        var finding = Diagnosis.Of(Tern.Case(runs) with { Baselines = [new("tern", "P1", Tern.Known)] });
        Assert.Null(finding.Named);
    }

    [Fact]
    public void Without_speeds_the_group_is_still_told()
    {
        var finding = Diagnosis.Of(Tern.Case(new WideOpenChange("tern", "P1", -0.03, null, new ChangeDoubt(0.0075, 0))));
        Assert.Equal(CauseGroup.RpmDown, finding.Group);
        Assert.Null(finding.Named);
    }

    /// <summary>A doubt of air moves RPM and speed alike, as the engine does: it must not point to the engine.</summary>
    [Fact]
    public void Air_that_was_not_read_takes_evidence_from_the_engine()
    {
        var (x, v) = Tern.Effect(Cause.EnginePower, 0.06);
        double None(ChangeDoubt doubt) => Diagnosis.Of(Tern.Case(new WideOpenChange("tern", "P1", x, v, doubt))).Suspects.First(s => s.Cause == Cause.None).Probability;
        Assert.True(None(new ChangeDoubt(0.013, 0.019, 0.8)) > 2 * None(Tern.DoubleRun));
    }
}
