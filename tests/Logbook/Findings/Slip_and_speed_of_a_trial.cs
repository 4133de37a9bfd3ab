using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Tests.Findings;

public class Slip_and_speed_of_a_trial
{
    /// <summary>
    /// Rows of tests/Propulsion/Reference/speed_slip_vectors.csv, whose provenance stands there: engine RPM, gear
    /// ratio, pitch [in], boat speed [kn], apparent slip, all six rows.
    /// </summary>
    [Theory]
    [InlineData(5500, 2.08, 9, 14.4, 0.264680)]
    [InlineData(5500, 2.08, 13, 22.5, 0.204581)]
    [InlineData(5500, 2.33, 14.5, 25.0, 0.112392)]
    [InlineData(5800, 2.0, 17, 33.9, 0.164380)]
    [InlineData(6000, 1.92, 19, 42.0, 0.140390)]
    [InlineData(5000, 2.33, 15, 24.0, 0.093930)]
    public void A_whole_trial_in_a_current_comes_to_the_slip_of_the_reference_table(double rpm, double gear, double pitch, double knots, double slip)
    {
        var trial = Dock.Trial("2026-02-01T10:00", rpm, 120) with { Runs = [Dock.Run(knots + 1.5, 10, ("single", rpm, false)), Dock.Run(knots - 1.5, 190, ("single", rpm, false))] };
        var fleet = new Fleet().With(Dock.Boat(), Dock.Engine() with { GearRatio = gear }, Dock.Fitted(), Dock.Prop(pitch: pitch), Dock.Mounted(), trial);
        var found = Only(fleet);
        Assert.Equal(100 * slip, found.SlipPercent!.Value, 0.51e-4);
        Assert.Equal(knots, found.SpeedKnots!.Value, 1e-9);
        Assert.Equal(rpm, found.Rpm);
        Assert.Empty(OfTheRuns(found));
    }

    [Theory]
    [InlineData("mph", 25.89253758)] // 22.5 kn by the exact units: 1.852 km/h a knot, 1.609344 km a mile
    [InlineData("km_per_h", 41.67)]
    [InlineData("m_per_s", 11.575)]
    public void A_speed_is_the_same_in_any_unit(string unit, double speed)
    {
        var trial = Dock.Trial("2026-02-01T10:00", 5500, 120);
        var found = Only(Dock.OneBoat().With(trial with { Runs = [.. trial.Runs!.Select(r => r with { Speed = speed, SpeedUnit = unit })] }));
        Assert.Equal(22.5, found.SpeedKnots!.Value, 1e-6);
        Assert.Equal(20.4581, found.SlipPercent!.Value, 1e-4);
    }

    [Fact]
    public void Four_runs_take_a_changing_current_out() // (1,3,3,1)/8
    {
        var found = Only(Dock.OneBoat().With(Runs((26.0, 0, 5500), (23.6, 180, 5500), (26.8, 0, 5500), (22.8, 180, 5500))));
        Assert.Equal((26.0 + (3 * 23.6) + (3 * 26.8) + 22.8) / 8, found.SpeedKnots!.Value, 1e-9);
    }

    [Fact]
    public void RPM_is_the_mean_of_the_runs_and_a_split_is_flagged()
    {
        var found = Only(Dock.OneBoat().With(Runs((22.5, 0, 5480), (22.5, 180, 5520))));
        Assert.Equal(5500, found.Rpm);
        Assert.Equal([TrialDoubt.RpmSplit], OfTheRuns(found));
        Assert.Empty(OfTheRuns(Only(Dock.OneBoat().With(Runs((22.5, 0, 5490), (22.5, 180, 5510)))))); // 0.4 %
    }

    [Fact]
    public void A_split_of_one_step_of_the_gauge_is_no_split()
    {
        var coarse = new Fleet().With(Dock.Boat(), Dock.Engine() with { TachometerStepRpm = 100 }, Dock.Fitted(), Dock.Prop(), Dock.Mounted());
        Assert.Empty(OfTheRuns(Only(coarse.With(Runs((22.5, 0, 5450), (22.5, 180, 5550))))));
        Assert.Equal([TrialDoubt.RpmSplit], OfTheRuns(Only(coarse.With(Runs((22.5, 0, 5400), (22.5, 180, 5550))))));
    }

    [Fact]
    public void What_leaves_the_current_in_is_flagged()
    {
        Assert.Equal([TrialDoubt.SingleRun], OfTheRuns(Only(Dock.OneBoat().With(Runs((22.5, 0, 5500))))));
        Assert.Equal([TrialDoubt.HeadingsNotOpposed], OfTheRuns(Only(Dock.OneBoat().With(Runs((22.5, 0, 5500), (22.5, 90, 5500))))));
    }

    [Fact]
    public void Negative_slip_is_told_and_flagged_and_never_clamped()
    {
        var found = Only(Dock.OneBoat().With(Runs((30, 0, 5500), (30, 180, 5500))));
        Assert.Equal(100 * (1 - (30 / 28.286987)), found.SlipPercent!.Value, 1e-4); // theoretical speed of the second row above
        Assert.Equal([TrialDoubt.NegativeSlip], OfTheRuns(found));
    }

    [Fact]
    public void Without_pitch_or_gear_ratio_no_slip_is_made_up()
    {
        Assert.Null(Only(new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Mounted(), Runs((22.5, 0, 5500)))).SlipPercent);
        Assert.Null(Only(new Fleet().With(Dock.Boat(), Dock.Fitted(), Dock.Prop(), Dock.Mounted(), Runs((22.5, 0, 5500)))).SlipPercent);
    }

    [Fact]
    public void A_boat_that_did_not_move_slipped_altogether() => Assert.Equal(100, Only(Dock.OneBoat().With(Runs((0, 0, 5500), (0, 180, 5500)))).SlipPercent);

    [Fact]
    public void Slip_is_by_the_pitch_of_its_day()
    {
        var repitch = new Logbook.Props.RepitchProp(Dock.At("2026-02-15T10:00", "repitch"), "p1", 12);
        var fleet = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500, 120), Dock.Trial("2026-03-01T10:00", 5500, 140), repitch);
        var trials = fleet.Finding().Positions.Single().Mounting!.Trials;
        Assert.Equal(100 * (1 - (22.5 / 28.286987)), trials[0].SlipPercent!.Value, 1e-4);
        Assert.Equal(100 * (1 - (22.5 / (28.286987 * 12 / 13))), trials[1].SlipPercent!.Value, 1e-4);
        Assert.Equal(12, fleet.Finding().Positions.Single().Mounting!.Prop.PitchInches);
    }

    private static RunTrial Runs(params (double Knots, double Heading, double Rpm)[] runs) =>
        Dock.Trial("2026-02-01T10:00", 5500, 120) with { Runs = [.. runs.Select(r => Dock.Run(r.Knots, r.Heading, ("single", r.Rpm, false)))] };

    /// <summary>What the runs themselves leave in doubt; nobody read the air here, and the gauge's step is another matter.</summary>
    private static IEnumerable<TrialDoubt> OfTheRuns(TrialFinding found) =>
        found.Flags.Except([TrialDoubt.PressureMissing, TrialDoubt.TemperatureMissing, TrialDoubt.HumidityMissing, TrialDoubt.CoarseTachometer]);

    private static TrialFinding Only(Fleet fleet) => fleet.Finding().Positions.Single().Mounting!.Trials.Single();
}
