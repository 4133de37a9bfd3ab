using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Tests.Trials;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>How two corrected trials become a change with its doubt. By hand, from the definitions.</summary>
public class Changes_between_trials
{
    private static readonly CorrectedTrial s_baseline = Corrected(5500, 30, airDoubt: 0.004);

    [Fact]
    public void The_doubt_of_a_change_is_that_of_its_trial()
    {
        var change = WideOpenChange.Between("tern", "P1", Corrected(5610, 30.3, airDoubt: 0.03), s_baseline, BoatResponse.Prior);
        Assert.Equal(Math.Log(5610 / 5500.0), change.LnRpm, 1e-12);
        Assert.Equal(Math.Log(1.01), change.LnSpeed!.Value, 1e-12);
        Assert.Equal(80 / 5610.0, change.Doubt.Rpm, 1e-12);
        Assert.Equal(0, change.Doubt.Correlation); // nothing of it was said to move both
    }

    [Fact]
    public void What_moves_RPM_and_speed_of_a_trial_together_is_their_correlation_and_what_the_gain_leaves_is_kept_apart()
    {
        var trial = ATrial.Usual.In(ATrial.SultryAir).Corrected();
        var doubt = ChangeDoubt.Of(trial, BoatResponse.Prior);
        Assert.Equal(trial.LogCovariance, doubt.Correlation * doubt.Rpm * doubt.Speed, 1e-12);
        Assert.True(doubt.Correlation > 0.05);
        Assert.Equal(0.10 * Math.Log(1.02279), doubt.ByGain, 1e-6);
        Assert.Equal(1.2 * doubt.ByGain, doubt.SpeedByGain, 1e-12);
        var own = doubt.Own();
        Assert.Equal((doubt.Rpm * doubt.Rpm) - (doubt.ByGain * doubt.ByGain), own.Rpm * own.Rpm, 1e-12);
        Assert.Equal(default, ChangeDoubt.Of(Corrected(5500, 30, 0) with { CorrectedSpeedKnots = null }, BoatResponse.Prior).Correlation);
    }

    /// <summary>By hand: twelve trials of 0.75 % each in air of one kind, whose gain leaves 0.4 % open, after a baseline of 0.2 %; all are corrected by one gain.</summary>
    [Fact]
    public void What_the_gain_leaves_open_does_not_average_away_and_cancels_in_the_baselines_air()
    {
        var shared = new ChangeDoubt(Root(0.0075, 0.004), Root(0.015, 0.0048), 0.004 * 0.0048 / (Root(0.0075, 0.004) * Root(0.015, 0.0048))) { ByGain = 0.004, SpeedByGain = 0.0048 };
        double[,] Covariance(ChangeDoubt baseline) => new CauseRows(Tern.Alone(0.01, 0.012) with
        {
            Baselines = [new("tern", "P1", baseline)],
            WideOpen = [.. Enumerable.Repeat(new WideOpenChange("tern", "P1", 0.01, 0.012, shared), 12)],
        }).Covariance(Tern.Console);

        var other = Covariance(Tern.Known);
        Assert.Equal((0.0075 * 0.0075 / 12) + (0.002 * 0.002) + (0.004 * 0.004), other[0, 0], 1e-12);
        Assert.Equal(0.004 * 0.0048, other[0, 1], 1e-12);
        var like = Covariance(new ChangeDoubt(Root(0.002, 0.004), Root(0.004, 0.0048), 0.004 * 0.0048 / (Root(0.002, 0.004) * Root(0.004, 0.0048))) { ByGain = 0.004, SpeedByGain = 0.0048 });
        Assert.Equal((0.0075 * 0.0075 / 12) + (0.002 * 0.002), like[0, 0], 1e-12);
        Assert.Equal(0, like[0, 1], 1e-12);
    }

    [Theory]
    [InlineData(TrialDoubt.LimiterReached, "limiter_reached")]
    [InlineData(TrialDoubt.PartThrottle, "part_throttle")]
    public void A_trial_that_shows_no_RPM_at_full_throttle_is_no_change_of_it(TrialDoubt doubt, string code)
    {
        var odd = s_baseline with { Doubts = [TrialDoubt.SingleRun, doubt] };
        Assert.Contains(code, Assert.Throws<ArgumentException>("trial", () => WideOpenChange.Between("tern", "P1", odd, s_baseline, BoatResponse.Prior)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("baseline", () => WideOpenChange.Between("tern", "P1", s_baseline, odd, BoatResponse.Prior));
    }

    /// <summary>ln(20.5/20) - 1.2 ln(4040/4000); the doubts 0.5/20.5, 0.5/20, 0.12 of that logarithm, and 1.2 times 40 RPM each.</summary>
    [Fact]
    public void A_point_at_nearly_the_same_RPM_is_brought_to_it()
    {
        var (now, then) = (Corrected(4040, 20.5, 0) with { Doubts = [TrialDoubt.PartThrottle] }, Corrected(4000, 20, 0));
        var change = PartThrottleChange.Between("tern", "P1", now, then, new Uncertain(1.2, 0.12));
        var x = Math.Log(1.01);
        Assert.Equal(Math.Log(1.025) - (1.2 * x), change.LnSpeed.Value, 1e-12);
        var variance = Math.Pow(0.5 / 20.5, 2) + Math.Pow(0.5 / 20, 2) + Math.Pow(0.12 * x, 2) + Math.Pow(1.2 * 40 / 4040, 2) + Math.Pow(1.2 * 40 / 4000, 2);
        Assert.Equal(Math.Sqrt(variance), change.LnSpeed.StandardDeviation, 1e-12);
    }

    [Fact]
    public void Points_at_other_RPM_or_without_speed_are_refused()
    {
        var kappa = new Uncertain(1.2, 0.12);
        Assert.Throws<ArgumentException>("trial", () => PartThrottleChange.Between("tern", "P1", Corrected(4400, 20, 0), Corrected(4000, 20, 0), kappa));
        Assert.Throws<ArgumentException>("trial", () => PartThrottleChange.Between("tern", "P1", s_baseline with { SpeedKnots = null }, s_baseline, kappa));
        Assert.Throws<ArgumentException>("baseline", () => PartThrottleChange.Between("tern", "P1", s_baseline, s_baseline with { SpeedKnots = null }, kappa));
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static CorrectedTrial Corrected(double rpm, double knots, double airDoubt) => new(
        new Uncertain(rpm, 40), new Uncertain(knots, 0.5), null, new(new Uncertain(1, airDoubt), true),
        new Uncertain(rpm, 80), new Uncertain(knots, 0.6), MeanSpeedMethod.DoubleRun, []);
}
