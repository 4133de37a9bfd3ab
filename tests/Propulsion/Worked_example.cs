using FleetWake.Propulsion.Advice;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests;

/// <summary>The worked example of docs/propulsion.md, step by step; its numbers were reckoned by hand there.</summary>
public class Worked_example
{
    private static readonly TrialReading s_trial = new(
        [
            new RunReading(EngineRate.FromRevolutionsPerMinute(5650), Speed.FromKnots(25.1), 90),
            new RunReading(EngineRate.FromRevolutionsPerMinute(5640), Speed.FromKnots(27.0), 270),
        ],
        new TrialConditions { Air = new AirState(Temperature.FromCelsius(22), Pressure.FromHectopascals(1009), 0.6) },
        new EngineData
        {
            Gear = new GearRatio(2.08),
            BandLow = EngineRate.FromRevolutionsPerMinute(5000),
            BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
        },
        new PropData(Length.FromInches(13)) { Diameter = Length.FromInches(11.5), Blades = 3 });

    /// <summary>Linnet's own: the Gawn series at her J, P/D and an area ratio of 0.55, with m = 1.14 and e = -1 as the page has them.</summary>
    private static (double J, BalanceSlopes Slopes) Balance()
    {
        var trial = TrialCorrection.Of(s_trial);
        var shape = new BladeShape(3, 0.55, 13 / 11.5);
        var n = trial.Rpm.Value / 2.08 / 60;                                                                                 // [rev/s]
        var J = Speed.FromKnots(trial.SpeedKnots!.Value.Value).MetresPerSecond / (n * Length.FromInches(11.5).Metres);       // [1]
        return (J, BalanceSlopes.Of(OpenWaterSeries.Gawn.At(shape, J), shape, resistanceExponent: 1.14, torqueSlope: -1));
    }

    [Fact]
    public void The_runs_come_to_one_trial()
    {
        var trial = TrialCorrection.Of(s_trial);
        Assert.Equal(5645, trial.Rpm.Value, 1e-9);
        Assert.Equal(26.05, trial.SpeedKnots!.Value.Value, 1e-9);
        Assert.Equal(0.103, trial.SlipFraction!.Value.Value, 0.0005);
    }

    [Fact]
    public void The_trial_comes_to_reference_conditions()
    {
        var trial = TrialCorrection.Of(s_trial);
        Assert.Equal(0.9903, trial.Correction!.Factor.Value, 0.00005);
        Assert.Equal(5624, trial.CorrectedRpm.Value, 0.5);
        Assert.Equal(25.93, trial.CorrectedSpeedKnots!.Value.Value, 0.005);
    }

    [Fact]
    public void The_balance_says_what_lost_pitch_does()
    {
        var (J, slopes) = Balance();
        Assert.Equal(1.01, J, 0.005);
        Assert.Equal(-2.91, slopes.A, 0.005);
        Assert.Equal(-4.65, slopes.B, 0.005);
        Assert.Equal(4.38, slopes.TorqueByPitch, 0.005);
        Assert.Equal(5.32, slopes.ThrustByPitch, 0.005);
        Assert.Equal(1.149, slopes.Kappa, 0.0005);
        Assert.Equal(1.57, slopes.H, 0.005);
        Assert.Equal(0.39, slopes.Gain, 0.005);
        var shift = LinearBalance.Shift(slopes, new BoatState { PitchChange = -0.03 });
        Assert.Equal(-0.028, shift.Contrast, 0.0005);
        Assert.Equal(0.0203, shift.LnRate, 0.00005);
        Assert.Equal(114, 5624 * shift.LnRate, 0.5);
        Assert.Equal(-0.0047, shift.LnSpeed, 0.00005);
    }

    [Fact]
    public void An_inch_more_pitch_is_this_many_RPM_less()
    {
        var table = PitchAdvice.Of(new PitchQuestion
        {
            FittedPitch = Length.FromInches(13),
            CorrectedRpm = TrialCorrection.Of(s_trial).CorrectedRpm,
            BandLow = EngineRate.FromRevolutionsPerMinute(5000),
            BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
            Available = [Length.FromInches(14)],
        });
        Assert.Equal(5328, table.Rows.Single(r => !r.Fitted).Landings[0].Rpm.Value, 1.0);
    }
}
