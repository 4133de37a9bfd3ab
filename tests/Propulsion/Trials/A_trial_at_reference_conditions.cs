using CsCheck;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

/// <summary>
/// N CF^g and V CF^(kappa g) with g 0.38 and kappa 1.2; CF from power_correction_vectors.csv, the rest worked by hand.
/// </summary>
public class A_trial_at_reference_conditions
{
    [Fact]
    public void In_reference_air_it_is_what_was_read()
    {
        var trial = ATrial.Usual.Corrected();
        Assert.Equal(5500, trial.Rpm.Value);
        Assert.Equal(31, trial.SpeedKnots!.Value.Value, 1e-12);
        Assert.Equal(5500, trial.CorrectedRpm.Value, 1e-9);
        Assert.Equal(31, trial.CorrectedSpeedKnots!.Value.Value, 1e-12);
        Assert.Equal(1, trial.Correction!.Factor.Value, 1e-12);
        Assert.Equal(MeanSpeedMethod.DoubleRun, trial.Method);
        Assert.Empty(trial.Doubts);
        Assert.Null(trial.NotApplied);
    }

    [Fact]
    public void In_sultry_air_the_engine_was_weak_and_would_have_turned_47_faster()
    {
        var trial = ATrial.Usual.In(ATrial.SultryAir).Corrected();
        Assert.Equal(1.02279, trial.Correction!.Factor.Value, 0.51e-5);
        Assert.Equal(5547.3, trial.CorrectedRpm.Value, 0.05); // 5500 x 1.02279^0.38 = 5500 x 1.00860
        Assert.Equal(31.320, trial.CorrectedSpeedKnots!.Value.Value, 0.0005); // 31 x 1.02279^0.456 = 31 x 1.01033
        Assert.Equal(5500, trial.Rpm.Value); // what was read stays what was read
    }

    [Fact]
    public void In_dry_cold_air_it_was_strong_and_would_have_turned_99_slower() // 15 deg C, 101 325 Pa, dry: CF 0.95341
        => Assert.Equal(5401.2, ATrial.Usual.In(ATrial.Air(15, 1013.25, 0)).Corrected().CorrectedRpm.Value, 0.05);

    [Fact]
    public void Slip_is_that_of_the_means() // 5500/2 x 17 in = 38.470 kn without slip; 1 - 31/38.470
        => Assert.Equal(0.19417, ATrial.Usual.Corrected().SlipFraction!.Value.Value, 1e-4);

    [Fact]
    public void Without_ratio_prop_or_speed_there_is_no_slip()
    {
        Assert.Null((ATrial.Usual with { Prop = null }).Corrected().SlipFraction);
        Assert.Null((ATrial.Usual with { Engine = ATrial.Engine with { Gear = null } }).Corrected().SlipFraction);
        var noSpeed = ATrial.Usual.EachRun(run => run with { Speed = null }).Corrected();
        Assert.Null(noSpeed.SlipFraction);
        Assert.Null(noSpeed.SpeedKnots);
        Assert.Null(noSpeed.CorrectedSpeedKnots);
        Assert.Equal(5500, noSpeed.CorrectedRpm.Value, 1e-9);
        Assert.Equal(MeanSpeedMethod.DoubleRun, noSpeed.Method);
    }

    [Fact]
    public void Rpm_are_averaged_with_the_weights_of_the_speeds()
    {
        var trial = ATrial.Of(ATrial.Run(5500, 32, 0), ATrial.Run(5540, 30, 180), ATrial.Run(5520, 32, 0)).Corrected();
        Assert.Equal(5525, trial.Rpm.Value, 1e-9); // (5500 + 2 x 5540 + 5520)/4
        Assert.Equal(31, trial.SpeedKnots!.Value.Value, 1e-12);
        Assert.Equal(MeanSpeedMethod.ThreeRuns, trial.Method);
    }

    [Fact]
    public void A_run_without_a_speed_counts_for_the_rpm_and_not_for_the_slip()
    {
        var trial = ATrial.Of(ATrial.Run(5490, 32, 40), ATrial.Run(5510, 30, 220), ATrial.Run(5600, null, 40)).Corrected();
        Assert.Equal((5490 + (2 * 5510) + 5600) / 4.0, trial.Rpm.Value, 1e-9);
        Assert.Equal(ATrial.Usual.Corrected().SlipFraction!.Value.Value, trial.SlipFraction!.Value.Value, 1e-12);
        Assert.Equal(MeanSpeedMethod.DoubleRun, trial.Method);
    }

    [Fact]
    public void Speeds_are_averaged_and_never_times() // a mile out at 32 kn and back at 24: 28, where distance over time says 27.43
    {
        var trial = ATrial.Of(ATrial.Run(5500, 32, 40), ATrial.Run(5500, 24, 220)).Corrected();
        Assert.Equal(28, trial.SpeedKnots!.Value.Value, 1e-12);
        Assert.NotEqual(2 / ((1 / 32.0) + (1 / 24.0)), trial.SpeedKnots!.Value.Value, 0.5);
    }

    [Fact]
    public void A_steady_current_changes_neither_speed_nor_slip() => Gen.Double[-6, 6].Sample(c =>
    {
        var trial = ATrial.Of(ATrial.Run(5490, 31 + c, 40), ATrial.Run(5510, 31 - c, 220)).Corrected();
        Assert.Equal(31, trial.SpeedKnots!.Value.Value, 1e-12);
        Assert.Equal(ATrial.Usual.Corrected().SlipFraction!.Value.Value, trial.SlipFraction!.Value.Value, 1e-12);
    });

    [Fact]
    public void A_tachometer_known_to_read_high_is_brought_right_in_rpm_and_slip_and_not_in_what_was_read()
    {
        var trial = Tachometer(new Uncertain(0.02, 0)).Corrected();
        Assert.Equal(5500, trial.Rpm.Value);
        Assert.Equal(5500 / 1.02, trial.CorrectedRpm.Value, 1e-9);
        Assert.Equal(1 - (31 * 1.02 / 38.47030), trial.SlipFraction!.Value.Value, 1e-5);
        Assert.Contains(TrialDoubt.TachometerCorrected, trial.Doubts);
        Assert.Equal(0, trial.UncheckedTachometerRpm);
    }

    [Fact]
    public void A_tachometer_never_checked_blurs_the_band_and_not_the_boat_against_itself()
    {
        var never = ATrial.Usual.Corrected();
        var exact = Tachometer(new Uncertain(0, 0)).Corrected();
        Assert.Equal(exact.CorrectedRpm, never.CorrectedRpm);
        Assert.Equal(0.015 * 5500, never.UncheckedTachometerRpm, 1e-9);
        var poorly = Tachometer(new Uncertain(0.02, 0.004)).Corrected();
        Assert.Equal(5500 / 1.02 * (0.004 / 1.02), poorly.UncheckedTachometerRpm, 1e-9); // what the check left open, shared as well
        Assert.Equal(exact.CorrectedRpm.StandardDeviation / 5500, poorly.CorrectedRpm.StandardDeviation / (5500 / 1.02), 1e-12);
        Assert.DoesNotContain(TrialDoubt.TachometerCorrected, exact.Doubts);
    }

    [Fact]
    public void At_part_throttle_the_hand_on_the_lever_makes_up_for_the_air_and_nothing_is_corrected()
    {
        var trial = (ATrial.Usual with { PartThrottle = true }).In(null).Corrected();
        Assert.Equal([TrialDoubt.PartThrottle], trial.Doubts);
        Assert.Null(trial.Correction);
        Assert.Null(trial.NotApplied);
        Assert.Equal(5500, trial.CorrectedRpm.Value, 1e-9);
        Assert.Equal(ATrial.Usual.Corrected().SlipFraction, trial.SlipFraction);
    }

    [Fact]
    public void Outside_validity_nothing_is_corrected_and_the_doubt_holds_what_might_have_been()
    {
        var trial = ATrial.Usual.In(ATrial.Air(5.25, 845.56, 0.4)).Corrected(); // CF 1.16063
        Assert.Null(trial.Correction);
        Assert.Equal(1.16063, trial.NotApplied!.Factor.Value, 0.51e-5);
        Assert.Equal(5500, trial.CorrectedRpm.Value, 1e-9);
        Assert.Equal(31, trial.CorrectedSpeedKnots!.Value.Value, 1e-12);
        Assert.Equal([TrialDoubt.OutsideValidity], trial.Doubts);
        var whole = Math.Sqrt((0.38 * 0.38) + (0.10 * 0.10)) * Math.Log(1.16063); // root mean square of g ln CF: 322 rev/min
        Assert.True(trial.CorrectedRpm.StandardDeviation > 5500 * whole);
        Assert.Equal(1.2 * whole * whole, trial.LogCovariance, 1e-4);
    }

    [Fact]
    public void A_supercharged_engine_is_not_corrected_either()
    {
        var trial = (ATrial.Usual.In(ATrial.SultryAir) with
        {
            Engine = ATrial.Engine with { Breathing = AirResponse.Supercharged },
        }).Corrected();
        Assert.Null(trial.Correction);
        Assert.Equal([TrialDoubt.NotCorrectable], trial.Doubts);
        Assert.Equal(5500, trial.CorrectedRpm.Value, 1e-9);
        Assert.True(trial.CorrectedRpm.StandardDeviation > ATrial.Usual.Corrected().CorrectedRpm.StandardDeviation);
    }

    [Fact]
    public void What_a_fleet_has_learned_of_gain_and_kappa_is_used()
    {
        var trial = (ATrial.Usual.In(ATrial.SultryAir) with
        {
            Response = new BoatResponse(new Uncertain(0.6, 0.05), new Uncertain(1.1, 0.05)),
        }).Corrected();
        Assert.Equal(5500 * Math.Pow(1.02279, 0.6), trial.CorrectedRpm.Value, 0.02);
        Assert.Equal(31 * Math.Pow(1.02279, 0.66), trial.CorrectedSpeedKnots!.Value.Value, 0.0002);
    }

    private static TrialReading Tachometer(Uncertain error) =>
        ATrial.Usual with { Engine = ATrial.Engine with { TachometerError = error } };
}
