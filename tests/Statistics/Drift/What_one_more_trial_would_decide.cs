using CsCheck;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Tests.Simulations;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>The worth of one more trial: properties, and brute force by trials drawn and assessed here; no source.</summary>
public sealed class What_one_more_trial_would_decide
{
    private static readonly DriftSettings s_plain = Drifts.Settings with { Noise = NoiseNodes.Of([0.007], [1]), GrossChance = 1e-6 };

    [Fact]
    public void Whatever_is_asked_of_whatever_history_is_answered() => Gen.Select(Drifts.Any, Gen.Double[-10, 3000], Gen.Double[0, 300]).Sample(
        (s, hours, gauge) => Drifts.Sound(Value(s, new(hours, GaugeSdRpm: gauge))), iter: 500);

    [Fact]
    public void So_is_a_plan_without_a_finite_number() => Drifts.Sound(Value(Drifts.Steady(6, 20), new(double.NaN, double.NaN, double.NaN, double.NaN)));

    /// <summary>The mean of what may be known then is what is known now, or the worth is counted wrongly.</summary>
    [Fact]
    public void The_mean_chance_after_the_trial_is_the_chance_before_it() => Gen.Select(Drifts.Any, Gen.Double[0, 400], Gen.Double[0, 300]).Sample(
        (s, hours, gauge) =>
        {
            var reading = NextReading.Of(Drifts.Assess(s), Drifts.Settings, SoundSeries.Of(s), new(hours, GaugeSdRpm: gauge))!;
            Assert.Equal(reading.Present, reading.MeanAfter, 1e-5);
        },
        iter: 200);

    /// <summary>Readings drawn from what is known, added to the history and assessed anew.</summary>
    [Theory]
    [InlineData(8, 20, 60, 0, 5800)]
    [InlineData(5, 35, 150, 30, 5900)]
    [InlineData(12, 0, 40, 0, 5630)]
    public void It_is_what_drawn_trials_decide(int trials, double drift, double ahead, double gauge, double top)
    {
        var s = Drifts.Steady(trials, drift) with { RatedMaxRpm = top };
        var found = DriftEstimator.Assess(s, Drifts.Prior, s_plain);
        var plan = new NextTrialPlan(ahead, GaugeSdRpm: gauge);
        var value = NextTrial.Of(found, s_plain, s, plan);
        var (draws, last, many) = (new Draws(11), s.Trials[^1], 1500);
        var now = NextReading.Of(found, s_plain, SoundSeries.Of(s), plan)!.Present;
        var (changed, variance) = (0, 0.0);
        for (var k = 0; k < many; k++)
        {
            var (share, g) = (draws.Uniform(0, 1), 0);
            while (g < SlopeGrid.Count - 1 && (share -= found.Weights[g]) > 0) g++;
            var (above, sd) = found.Levels!.At(g);
            var level = found.Levels.Origin + above + (sd * draws.Normal()) + (SlopeGrid.At(g) * ahead / 100);
            var noise = Math.Sqrt(Math.Pow(0.007 * found.Levels.Origin, 2) + (gauge * gauge));
            var next = new DriftTrial(last.Week + 5, last.EngineHours + ahead, level + (noise * draws.Normal()), OwnSdRpm: gauge);
            var then = DriftEstimator.Assess(s with { Trials = [.. s.Trials, next] }, Drifts.Prior, s_plain);
            var chance = then.Exit!.ChanceWithin(100) + then.ExitBelow!.ChanceWithin(100);
            changed += chance >= 0.5 == now >= 0.5 ? 0 : 1;
            variance += Math.Pow(then.RpmPer100Hours.StandardError, 2) / many;
        }

        // The doubt of 1,500 draws is 0.013 at most.
        Assert.Equal((double)changed / many, value.ChangesDecisionChance, 0.035);
        Assert.Equal(1 - (variance / Math.Pow(found.RpmPer100Hours.StandardError, 2)), value.DoubtRemovedShare, 0.03);
    }

    [Fact]
    public void A_gauge_that_shows_nothing_removes_no_doubt_and_changes_no_decision()
    {
        foreach (var gauge in new[] { 1e6, double.PositiveInfinity })
        {
            var value = Value(Drifts.Steady(8, 20) with { RatedMaxRpm = 5640 }, new(60, GaugeSdRpm: gauge));

            Assert.Equal(0, value.ChangesDecisionChance, 1e-6);
            Assert.Equal(0, value.DoubtRemovedShare, 1e-6);
            Assert.Null(value.LeastDriftShown);
        }
    }

    [Fact]
    public void A_second_trial_at_the_hour_of_the_first_tells_nothing_of_the_drift()
    {
        var value = Value(Drifts.Steady(1, 20), new(0));

        Assert.Equal(0, value.DoubtRemovedShare, 1e-9);
        Assert.Null(value.LeastDriftShown);
    }

    [Fact]
    public void The_longer_one_waits_the_more_doubt_goes_and_the_smaller_a_drift_would_show()
    {
        var values = new[] { 10, 50, 100, 200 }.Select(h => Value(Drifts.Steady(6, 20), new(h))).ToArray();

        Assert.All(values.Zip(values.Skip(1)), p => Assert.True(p.First.DoubtRemovedShare < p.Second.DoubtRemovedShare && p.First.LeastDriftShown > p.Second.LeastDriftShown));
        Assert.True(Value(Drifts.Steady(6, 20), new(100, GaugeSdRpm: 60)).LeastDriftShown > values[2].LeastDriftShown);
    }

    [Fact]
    public void The_drift_shown_may_be_asked_of_a_later_trial_than_the_decision()
    {
        var (now, later) = (Value(Drifts.Steady(6, 20), new(10)), Value(Drifts.Steady(6, 20), new(100)));

        Assert.Equal(now with { LeastDriftShown = later.LeastDriftShown }, Value(Drifts.Steady(6, 20), new(10) { ShownHoursAhead = 100 }));
        Assert.Equal(now, Value(Drifts.Steady(6, 20), new(10) { ShownHoursAhead = double.NaN }));
    }

    /// <summary>Two trials of one scatter sigma, dt apart: the drift's standard error is sigma sqrt(2) / dt, the level known from them alone.</summary>
    [Fact]
    public void The_least_drift_that_two_trials_show_is_their_scatter_over_the_hours_between()
    {
        var s = new DriftSeries(5000, 6000, [new(0, 0, 5600)], []);
        var wide = s_plain with { LevelSdRpm = 1e5, TemperatureSdShare = 1e-9, LoadSdShare = 1e-9 };

        double? Least(double gauge) => NextTrial.Of(DriftEstimator.Assess(s, Drifts.Prior, wide), wide, s, new(200, GaugeSdRpm: gauge)).LeastDriftShown;

        Assert.Equal(1.2815515655446 * 0.007 * 5600 * Math.Sqrt(2) / 2, Least(0)!.Value, 1e-3);
        Assert.Equal(Least(0), Least(30)); // a step below the scatter is part of it
        Assert.Equal(1.2815515655446 * 60 * Math.Sqrt(2) / 2, Least(60)!.Value, 1e-3);
    }

    [Fact]
    public void A_boat_far_from_the_ends_of_its_band_would_decide_nothing_and_one_at_the_end_much()
    {
        var s = Drifts.Steady(10, 3);

        Assert.InRange(Value(s with { RatedMinRpm = 4600, RatedMaxRpm = 6600 }, new(30)).ChangesDecisionChance, 0, 1e-3);
        Assert.InRange(Value(s with { RatedMaxRpm = Drifts.Assess(s).LevelAt(130)!.Value }, new(30)).ChangesDecisionChance, 0.25, 0.75);
    }

    [Fact]
    public void After_a_strike_the_next_trial_decides_more()
    {
        var s = Drifts.Steady(10, 3) with { RatedMaxRpm = 5760 };

        Assert.True(Value(s with { Events = [new(60, StepKind.Strike)] }, new(5)).ChangesDecisionChance > 5 * Value(s, new(5)).ChangesDecisionChance);
    }

    [Fact]
    public void Where_nothing_is_known_the_first_trial_tells_where_it_stands_and_nothing_of_the_drift()
    {
        var first = Value(new(5000, 6000, [], []), new(30));

        Assert.InRange(first.ChangesDecisionChance, 0.2, 0.8);
        Assert.Equal(0, first.DoubtRemovedShare, 1e-9);
        Assert.Null(first.LeastDriftShown);
        Assert.Equal(new(0, 0, null), Value(new(double.NaN, 6000, [], []), new(30)));
    }

    [Fact]
    public void Without_a_band_there_is_nothing_to_decide_but_doubt_to_remove()
    {
        var value = Value(Drifts.Steady(6, 20) with { RatedMinRpm = double.NaN }, new(60));

        Assert.Equal(0, value.ChangesDecisionChance);
        Assert.InRange(value.DoubtRemovedShare, 0.01, 0.9);
    }

    private static NextTrialValue Value(DriftSeries s, NextTrialPlan plan) => NextTrial.Of(Drifts.Assess(s), Drifts.Settings, s, plan);
}
