using CsCheck;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

/// <summary>Doubts worked by hand from the parts that <see cref="TrialNoise"/> declares, and whether they keep their word.</summary>
public class How_sure_a_corrected_trial_is
{
    [Fact]
    public void A_double_run_comes_to_0_7_per_cent_in_rpm_and_1_5_in_speed()
    {
        var trial = (ATrial.Usual with
        {
            Response = new BoatResponse(new Uncertain(0.38, 0), new Uncertain(1.2, 0)),
        }).Corrected();

        // Two runs of 0.25 % and a trial of 0.67 %, 2.9 rev/min of rounding, and 0.38 x 0.28 % of the air.
        Assert.Equal(0.0070, trial.CorrectedRpm.StandardDeviation / 5500, 0.0001);
        // Two runs of 1.5 % and 0.1 kn, a trial of 1 %, and the air.
        Assert.Equal(0.0147, trial.CorrectedSpeedKnots!.Value.StandardDeviation / 31, 0.0002);
    }

    [Fact]
    public void The_doubt_of_the_mean_is_that_of_its_runs_and_of_the_gauges_step()
    {
        var trial = ATrial.Usual.Corrected();
        Assert.Equal(
            Math.Sqrt((Math.Pow(0.0025 * 5500, 2) / 2) + (100.0 / 12)), trial.Rpm.StandardDeviation, 1e-9);
        Assert.Equal(
            Math.Sqrt((Math.Pow(0.015 * 31, 2) / 2) + (0.01 / 2)), trial.SpeedKnots!.Value.StandardDeviation, 1e-9);
    }

    [Fact]
    public void Four_runs_that_agree_are_surer_than_two_and_four_that_do_not_are_less_sure()
    {
        CorrectedTrial Four(double off) => ATrial.Of(
            ATrial.Run(5490 - off, 32, 40), ATrial.Run(5510 - off, 30, 220), ATrial.Run(5490 + off, 32, 40), ATrial.Run(5510 + off, 30, 220)).Corrected();
        var two = ATrial.Usual.Corrected().Rpm.StandardDeviation;
        Assert.True(Four(0).Rpm.StandardDeviation < two);
        Assert.True(Four(100).Rpm.StandardDeviation > two);

        // (4 x 13.75^2 + Q)/(4 + 2), Q = 4 x 100^2, times (1 + 9 + 9 + 1)/64, and the step's 100/12.
        Assert.Equal(
            Math.Sqrt((((4 * 13.75 * 13.75) + 40_000) / 6 * 20 / 64) + (100.0 / 12)), Four(100).Rpm.StandardDeviation, 1e-9);
    }

    [Fact]
    public void A_long_log_leaves_less_of_its_scatter_than_a_glance()
    {
        double Sd(TimeSpan? held) => ATrial.Usual.EachRun(run => run with { RpmScatter = 80, Held = held }).Corrected().Rpm.StandardDeviation;
        var (glance, log) = (Sd(null), Sd(TimeSpan.FromSeconds(50)));
        Assert.Equal(Math.Sqrt((13.75 * 13.75 / 2) + (80 * 80 / 2.0)), glance, 1e-9); // scattered over steps: no rounding left
        Assert.Equal(Math.Sqrt((13.75 * 13.75 / 2) + (80 * 80 / 20.0)), log, 1e-9); // ten readings 5 s apart
    }

    [Fact]
    public void A_step_that_nobody_told_is_taken_from_the_readings()
    {
        double Sd(double a, double b) => (ATrial.Of(ATrial.Run(a, 32, 40), ATrial.Run(b, 30, 220)) with
        {
            Engine = ATrial.Engine with { TachometerStep = null },
        }).Corrected().Rpm.StandardDeviation;
        double Of(double step) => Math.Sqrt((13.75 * 13.75 / 2) + (step * step / 12));
        Assert.Equal(Of(50), Sd(5500, 5500), 1e-9);
        Assert.Equal(Of(10), Sd(5490, 5510), 1e-9);
        Assert.Equal(Of(1), Sd(5493, 5507), 1e-9);
        Assert.Equal(Of(1), Sd(5499.5, 5500.5), 1e-9);
    }

    [Fact]
    public void A_tachometer_held_against_a_poor_instrument_is_less_sure_against_the_band() => Assert.True(
        (ATrial.Usual with { Engine = ATrial.Engine with { TachometerError = new Uncertain(0, 0.01) } }).Corrected().UncheckedTachometerRpm
            > (ATrial.Usual with { Engine = ATrial.Engine with { TachometerError = new Uncertain(0, 0.002) } }).Corrected().UncheckedTachometerRpm);

    [Fact]
    public void The_doubt_of_the_gain_counts_the_more_the_further_the_air_is_from_reference()
    {
        var none = new BoatResponse(new Uncertain(0.38, 0), new Uncertain(1.2, 0));
        double By(AirState air) => Math.Sqrt(
            Math.Pow(Sd(ATrial.Usual.In(air)) / 5500, 2) - Math.Pow(Sd(ATrial.Usual.In(air) with { Response = none }) / 5500, 2));
        Assert.InRange(By(ATrial.ReferenceAir), 0, 0.001); // only 0.1 x 0.28 % is left
        Assert.Equal(0.1 * Math.Log(1.02279), By(ATrial.SultryAir), 0.0003);
    }

    [Fact]
    public void Every_doubt_about_the_boat_widens_and_none_narrows()
    {
        var usual = ATrial.Usual.Corrected();
        foreach (var trial in new[]
        {
            ATrial.Of(ATrial.Usual.Runs[0]),
            ATrial.Usual.EachRun(run => run with { Ventilated = true }),
            ATrial.Usual.EachRun(run => run with { LimiterReached = true }),
            ATrial.Usual.EachRun(run => run with { Held = TimeSpan.FromSeconds(4) }),
            ATrial.Usual.In(ATrial.ReferenceAir with { StationPressure = null }),
            ATrial.Usual.In(null),
            Against(here => here with { TrimDegrees = 6 }, new() { TrimDegrees = 1 }),
            Against(here => here with { Load = Mass.FromKilograms(300) }, new() { Load = default(Mass) }),
            Against(here => here with { Water = Water.Fresh }, new() { Water = Water.Salt }),
            Against(here => here with { WaterDepth = Length.FromMetres(1.5) }, new()),
        })
        {
            var corrected = trial.Corrected();
            var label = string.Join(", ", corrected.Doubts);
            Assert.True(Relative(corrected.CorrectedRpm) > Relative(usual.CorrectedRpm), label);
        }
    }

    [Fact]
    public void A_current_that_no_run_opposes_stays_in_the_doubt_of_speed_and_slip()
    {
        var (one, two) = (ATrial.Of(ATrial.Usual.Runs[0]).Corrected(), ATrial.Usual.Corrected());
        Assert.True(one.SpeedKnots!.Value.StandardDeviation > 0.7);
        Assert.True(one.SlipFraction!.Value.StandardDeviation > two.SlipFraction!.Value.StandardDeviation);
    }

    [Fact]
    public void Brackish_water_is_half_as_unlike_as_fresh()
    {
        double Extra(Water here) => Math.Pow(Sd(Against(c => c with { Water = here }, new() { Water = Water.Salt })), 2)
            - Math.Pow(Sd(ATrial.Usual), 2);
        Assert.Equal(4, Extra(Water.Fresh) / Extra(Water.Brackish), 1e-6);
    }

    [Fact]
    public void Rpm_scaled_and_speeds_scaled_scale_the_result_and_its_doubt() => Gen.Double[0.7, 1.4].Sample(k =>
    {
        var trial = ATrial.Usual with { Engine = ATrial.Engine with { TachometerStep = EngineRate.FromRevolutionsPerMinute(10 * k) } };
        var scaled = trial.EachRun(run => run with { Engine = EngineRate.FromRevolutionsPerMinute(run.Engine.RevolutionsPerMinute * k) });
        Assert.Equal(ATrial.Usual.Corrected().CorrectedRpm.Value * k, scaled.Corrected().CorrectedRpm.Value, 1e-8);
        Assert.Equal(Sd(ATrial.Usual) * k, Sd(scaled), 1e-8);
    });

    private static double Sd(TrialReading trial) => trial.Corrected().CorrectedRpm.StandardDeviation;

    private static double Relative(Uncertain number) => number.StandardDeviation / number.Value;

    private static TrialReading Against(Func<TrialConditions, TrialConditions> here, TrialConditions baseline) =>
        ATrial.Usual with { Conditions = here(ATrial.Usual.Conditions), Baseline = baseline };
}
