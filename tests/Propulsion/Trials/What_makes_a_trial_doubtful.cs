using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

/// <summary>Where each doubt begins. The limits are common practice, no source, where <see cref="TrialLimits"/> names none.</summary>
public class What_makes_a_trial_doubtful
{
    private static readonly TrialReading s_usual = ATrial.Usual;

    private static readonly Dictionary<TrialDoubt, (TrialReading Just, TrialReading NotYet)> s_cases = new()
    {
        [TrialDoubt.SingleRun] = (ATrial.Of(s_usual.Runs[0]), s_usual),
        [TrialDoubt.HeadingsNotOpposed] = (Back(251), Back(250)), // out on 40: 31 degrees off, and 30
        [TrialDoubt.RpmSplit] = (Rpm(5480, 5520), Rpm(5490, 5510)), // 0.73 % and 0.36 %
        [TrialDoubt.LimiterReached] = (Second(run => run with { LimiterReached = true }), s_usual),
        [TrialDoubt.Ventilation] = (Second(run => run with { Ventilated = true }), s_usual),
        [TrialDoubt.ShallowWater] = (Depth(2.9), Depth(3.1)),
        [TrialDoubt.ShortRun] = (Held(9.9), Held(10)),
        [TrialDoubt.SpeedNoise] = (
            Second(run => run with { SpeedScatterKnots = 0.61 }), Second(run => run with { SpeedScatterKnots = 0.6 })),
        [TrialDoubt.RpmNoise] = (
            Second(run => run with { RpmScatter = 55.2 }), Second(run => run with { RpmScatter = 55 })),
        [TrialDoubt.CoarseTachometer] = (Step(100), Step(50)), // 29 and 14 rev/min of 5500: 0.52 % and 0.26 %
        [TrialDoubt.TachometerCorrected] = (Tachometer(0.001), Tachometer(0)),
        [TrialDoubt.TrimUnlike] = (Against(Trim(3.1), Trim(1)), Against(Trim(3), Trim(1))),
        [TrialDoubt.LoadUnlike] = (Against(Load(251), Load(200)), Against(Load(250), Load(200))),
        [TrialDoubt.WaterUnlike] = (
            Against(In(Water.Fresh), In(Water.Salt)), Against(In(Water.Salt), In(Water.Salt))),
        [TrialDoubt.Altitude] = (s_usual.In(ATrial.Air(20, 954, 0.5)), s_usual.In(ATrial.Air(20, 955, 0.5))),
        [TrialDoubt.OutsideValidity] = (
            s_usual.In(ATrial.Air(38, 1010, 0.9)), s_usual.In(ATrial.Air(35, 1005, 0.8))), // CF 1.0757 and 1.0571
        [TrialDoubt.PressureMissing] = (s_usual.In(ATrial.ReferenceAir with { StationPressure = null }), s_usual),
        [TrialDoubt.TemperatureMissing] = (s_usual.In(ATrial.ReferenceAir with { Temperature = null }), s_usual),
        [TrialDoubt.HumidityMissing] = (
            s_usual.In(ATrial.ReferenceAir with { RelativeHumidityFraction = null }), s_usual),
        [TrialDoubt.NotCorrectable] = (
            s_usual with { Engine = ATrial.Engine with { Breathing = AirResponse.Supercharged } }, s_usual),
        [TrialDoubt.NegativeSlip] = (Knots(38.5), Knots(38.4)), // 38.470 kn without slip
        [TrialDoubt.AboveTheoretical] = (Knots(44.3), Knots(44.2)), // and 15 % above it 44.241
        [TrialDoubt.RpmImplausible] = (Rpm(4949, 6051), Rpm(4951, 6049)), // 20.04 % and 19.96 % of 5500
        [TrialDoubt.PartThrottle] = (s_usual with { PartThrottle = true }, s_usual),
    };

    public static TheoryData<TrialDoubt> All => [.. Enum.GetValues<TrialDoubt>()];

    [Theory]
    [MemberData(nameof(All))]
    public void Each_is_told_from_its_limit_on_and_not_before(TrialDoubt doubt)
    {
        var (just, notYet) = s_cases[doubt];
        Assert.Contains(doubt, just.Corrected().Doubts);
        Assert.DoesNotContain(doubt, notYet.Corrected().Doubts);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Each_has_its_code_in_snake_case(TrialDoubt doubt)
    {
        var code = TrialDoubts.Code(doubt);
        Assert.Matches("^[a-z]+(_[a-z]+)*$", code);
        Assert.Equal(doubt.ToString(), string.Concat(code.Split('_').Select(word => char.ToUpperInvariant(word[0]) + word[1..])));
    }

    [Fact]
    public void Codes_are_words_of_the_trade()
    {
        Assert.Equal("single_run", TrialDoubts.Code(TrialDoubt.SingleRun));
        Assert.Equal("headings_not_opposed", TrialDoubts.Code(TrialDoubt.HeadingsNotOpposed));
        Assert.Throws<ArgumentOutOfRangeException>("doubt", () => TrialDoubts.Code((TrialDoubt)99));
    }

    [Fact]
    public void They_are_told_each_once_in_the_order_of_their_declaration()
    {
        var doubts = s_usual.In(null).EachRun(run => run with { LimiterReached = true, Ventilated = true }).Corrected().Doubts;
        Assert.Equal(
            [TrialDoubt.LimiterReached, TrialDoubt.Ventilation, TrialDoubt.PressureMissing, TrialDoubt.TemperatureMissing, TrialDoubt.HumidityMissing],
            doubts);
    }

    [Fact]
    public void A_boat_faster_than_its_prop_can_go_is_asked_about_and_kept()
    {
        var trial = Knots(45).Corrected();
        Assert.Equal(45, trial.SpeedKnots!.Value.Value, 1e-12);
        Assert.Equal(1 - (45 / 38.47030), trial.SlipFraction!.Value.Value, 1e-5);
        Assert.Equal([TrialDoubt.NegativeSlip, TrialDoubt.AboveTheoretical], trial.Doubts);
    }

    [Fact]
    public void Runs_whose_RPM_no_wind_brings_so_far_apart_are_not_blamed_on_it()
    {
        var trial = Rpm(548, 5520).Corrected(); // a figure was left out
        Assert.Contains(TrialDoubt.RpmImplausible, trial.Doubts);
        Assert.DoesNotContain(TrialDoubt.RpmSplit, trial.Doubts);
        Assert.True(trial.Rpm.StandardDeviation > 1400, "uniform between both: 4972/12^0.5 = 1435 rev/min");
        // Two runs the same way have no split, and are told all the same.
        Assert.Contains(TrialDoubt.RpmImplausible, ATrial.Of(ATrial.Run(548, 32, 40), ATrial.Run(5520, 30, 40)).Corrected().Doubts);
    }

    [Fact]
    public void Two_headings_one_step_of_a_coarse_gauge_apart_are_not_split() => // 1.8 %, but it cannot show less
        Assert.DoesNotContain(
            TrialDoubt.RpmSplit,
            (Rpm(5500, 5600) with { Engine = ATrial.Engine with { TachometerStep = EngineRate.FromRevolutionsPerMinute(100) } })
                .Corrected().Doubts);

    /// <summary>Depth Froude number V/(g h)^0.5: 31 kn over 9 m is 1.7 and past it, 15 kn is 0.82 and in it.</summary>
    [Fact]
    public void Water_of_a_boats_length_is_shallow_only_about_the_speed_of_its_longest_wave()
    {
        Assert.DoesNotContain(TrialDoubt.ShallowWater, Depth(9).Corrected().Doubts);
        Assert.Contains(TrialDoubt.ShallowWater, (Knots(15) with { Conditions = Depth(9).Conditions }).Corrected().Doubts);
        Assert.DoesNotContain(TrialDoubt.ShallowWater, (Knots(15) with { Conditions = Depth(11).Conditions }).Corrected().Doubts);
    }

    [Fact]
    public void What_only_one_of_two_trials_wrote_down_is_not_called_unlike() => Assert.Empty(
        Against(Load(400), new TrialConditions()).Corrected().Doubts);

    private static TrialReading Second(Func<RunReading, RunReading> change) =>
        s_usual with { Runs = [s_usual.Runs[0], change(s_usual.Runs[1])] };

    private static TrialReading Back(double heading) => Second(run => run with { HeadingDegrees = heading });

    private static TrialReading Held(double seconds) => Second(run => run with { Held = TimeSpan.FromSeconds(seconds) });

    private static TrialReading Rpm(double there, double back) =>
        ATrial.Of(ATrial.Run(there, 32, 40), ATrial.Run(back, 30, 220));

    private static TrialReading Knots(double knots) =>
        ATrial.Of(ATrial.Run(5490, knots, 40), ATrial.Run(5510, knots, 220));

    private static TrialReading Depth(double metres) => s_usual with
    {
        Conditions = s_usual.Conditions with { WaterDepth = Length.FromMetres(metres) },
    };

    private static TrialReading Step(double rpm) => s_usual with
    {
        Engine = ATrial.Engine with { TachometerStep = EngineRate.FromRevolutionsPerMinute(rpm) },
    };

    private static TrialReading Tachometer(double error) => s_usual with
    {
        Engine = ATrial.Engine with { TachometerError = new Uncertain(error, 0.002) },
    };

    private static TrialReading Against(TrialConditions here, TrialConditions baseline) => s_usual with
    {
        Conditions = here with { Air = ATrial.ReferenceAir },
        Baseline = baseline,
    };

    private static TrialConditions Trim(double degrees) => new() { TrimDegrees = degrees };

    private static TrialConditions Load(double kilograms) => new() { Load = Mass.FromKilograms(kilograms) };

    private static TrialConditions In(Water water) => new() { Water = water };
}
