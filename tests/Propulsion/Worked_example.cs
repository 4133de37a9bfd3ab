using FleetWake.Propulsion.Advice;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Balance;
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

    // The row of boat B at e = -1 and m = 1.14 of tests/Propulsion/Reference/wot_linear_coefficients.csv, rounded as in the page.
    private static readonly BalanceSlopes s_slopes = new(-1.91, -2.69, 1.14, -1, 3.51, 3.44);

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
        Assert.Equal(1.22, s_slopes.Kappa, 0.005);
        Assert.Equal(1.57, s_slopes.H, 0.005);
        Assert.Equal(0.39, s_slopes.Gain, 0.005);
        var shift = LinearBalance.Shift(s_slopes, new BoatState { PitchChange = -0.03 });
        Assert.Equal(0.021, shift.LnRate, 0.0005);
        Assert.Equal(118, 5624 * shift.LnRate, 3.0); // the page takes dlnP = -0.03, the balance ln 0.97
        Assert.Equal(-0.001, shift.LnSpeed, 0.0005);
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
