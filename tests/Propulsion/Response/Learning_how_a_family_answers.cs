using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Response;
using FleetWake.Propulsion.Tests.Balance;

namespace FleetWake.Propulsion.Tests.Response;

/// <summary>Gain and pitch elasticity of an engine family, from weather and from changes of pitch. Simulated and computed here.</summary>
public class Learning_how_a_family_answers
{
    private const double TrialNoise = 0.0075; // of a double run; common practice, no source
    private static readonly double s_pair = TrialNoise * Math.Sqrt(2);

    [Fact]
    public void Nothing_known_leaves_the_prior()
    {
        var learned = GainLearning.Learn([], []);
        Assert.Equal(new Uncertain(0.38, 0.10), learned.Gain);
        Assert.Equal(new Uncertain(-0.73, 0.15), learned.PitchElasticity);
        Assert.Equal(1, learned.PriorShare);
    }

    [Fact]
    public void A_change_too_small_to_tell_anything_leaves_it_too()
    {
        var learned = GainLearning.Learn([new(new Uncertain(0.001, 0), new Uncertain(0.004, 0.02))], []);
        Assert.Equal(0.38, learned.Gain.Value, 2e-3);
        Assert.Equal(0.10, learned.Gain.StandardDeviation, 2e-3);
        Assert.Equal(0.15, learned.PitchElasticity.StandardDeviation, 2e-3);
    }

    [Fact]
    public void One_repitch_of_two_inches_halves_the_doubt_of_both()
    {
        var x = Math.Log(15.0 / 17); // 17 in to 15 in
        var learned = GainLearning.Learn([], [new(new Uncertain(x, 0.015), new Uncertain(-0.6 * x, s_pair))]);
        Assert.InRange(learned.PitchElasticity.Value, -0.68, -0.58);
        Assert.InRange(learned.PitchElasticity.StandardDeviation, 0.05, 0.12);
        Assert.True(learned.Gain.Value < 0.36, "a steeper engine answers less to power too");
        Assert.InRange(learned.PriorShare, 0.2, 0.7);
    }

    /// <summary>g = 1/(h - e): 1/(1.6 + 1) at e = -1, and 1/(1.6 + 2) at e = -2.</summary>
    [Theory]
    [InlineData(0.385, -1)]
    [InlineData(0.278, -2)]
    public void The_engines_slope_follows_from_the_gain(double gain, double slope)
    {
        var learned = LearnedResponse.Prior with { Gain = new Uncertain(gain, 0.02) };
        Assert.Equal(slope, learned.TorqueSlope.Value, 0.01);
        Assert.Equal(0.02 / (gain * gain), learned.TorqueSlope.StandardDeviation, 0.02);
    }

    [Fact]
    public void The_truth_lies_within_the_claimed_doubt_as_often_as_claimed()
    {
        var random = new Random(7);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (n, inside, error, prior) = (200, 0, 0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            var g = 0.38 + (0.10 * Math.Clamp(Normal(), -2.5, 2.5));
            var eta = -0.73 - (0.15 * 0.9 * (g - 0.38) / 0.10) + (0.15 * Math.Sqrt(1 - 0.81) * Normal());
            var power = Enumerable.Range(0, 12).Select(_ => (0.02 * Normal()) is var x ? new PowerStep(new Uncertain(x, 0.003), new Uncertain((g * (x + (0.003 * Normal()))) + (s_pair * Normal()), s_pair)) : null!).ToList();
            var pitch = Enumerable.Range(0, 2).Select(k => (k == 0 ? 0.06 : -0.11) is var x ? new PitchStep(new Uncertain(x, 0.015), new Uncertain((eta * (x + (0.015 * Normal()))) + (s_pair * Normal()), s_pair)) : null!).ToList();
            var learned = GainLearning.Learn(power, pitch);
            var z = (learned.Gain.Value - g) / learned.Gain.StandardDeviation;
            if (Math.Abs(z) < 1.645) inside++;
            (error, prior) = (error + Math.Pow(learned.Gain.Value - g, 2), prior + Math.Pow(0.38 - g, 2));
        }

        Assert.InRange(inside / (double)n, 0.84, 0.97);
        Assert.True(error < 0.5 * prior, "learning must bring the gain nearer than the prior");
    }

    /// <summary>A boat that answers 8 % more than its family, read exactly: whatever it shows, the family is known no better than the boats of it are alike.</summary>
    [Fact]
    public void Many_steps_of_one_boat_tell_that_boat_and_not_its_family()
    {
        List<PowerStep> Steps(string? boat) => [.. Enumerable.Range(0, 60).Select(i =>
            (0.02 * ((i % 5) - 2)) is var x ? new PowerStep(new Uncertain(x, 0), new Uncertain(0.38 * 1.08 * x, 0.002)) { Boat = boat } : null!)];
        var (known, unknown) = (GainLearning.Learn(Steps("gull"), []).Gain, GainLearning.Learn(Steps(null), []).Gain);
        Assert.InRange(known.StandardDeviation, 0.85 * 0.08 * 0.38, 1.15 * 0.08 * 0.38);
        Assert.True(unknown.StandardDeviation < 0.3 * known.StandardDeviation, "as many boats they would average");
        Assert.InRange(0.38, known.Low(1.5), known.High(1.5));

        List<PowerStep> fleet = [.. Enumerable.Range(0, 6).SelectMany(boat => Steps($"boat {boat}"))];
        Assert.True(GainLearning.Learn(fleet, []).Gain.StandardDeviation < 0.5 * known.StandardDeviation, "boats average");
    }

    /// <summary>Three boats with an 8 % of their own and 25 steps each, computed here: the family's gain lies within the claim as often as claimed.</summary>
    [Fact]
    public void The_familys_gain_lies_within_the_claimed_doubt_though_boats_differ()
    {
        var random = new Random(11);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (n, inside) = (100, 0);
        for (var i = 0; i < n; i++)
        {
            var g = 0.38 + (0.10 * Math.Clamp(Normal(), -2.5, 2.5));
            List<PowerStep> steps = [.. Enumerable.Range(0, 3).SelectMany(boat =>
            {
                var own = g * (1 + (0.08 * Normal()));
                return Enumerable.Range(0, 25).Select(_ => (0.03 * Normal()) is var x
                    ? new PowerStep(new Uncertain(x, 0), new Uncertain((own * x) + (0.004 * Normal()), 0.004)) { Boat = $"boat {boat}" } : null!);
            })];
            var learned = GainLearning.Learn(steps, []).Gain;
            if (Math.Abs(learned.Value - g) < 1.645 * learned.StandardDeviation) inside++;
        }

        Assert.InRange(inside / (double)n, 0.82, 0.99);
    }

    [Fact]
    public void One_wild_reading_does_not_run_away_with_the_gain()
    {
        var good = Enumerable.Range(0, 12).Select(i => new PowerStep(new Uncertain(0.01 * (i - 5.5), 0), new Uncertain(0.40 * 0.01 * (i - 5.5), s_pair))).ToList();
        var clean = GainLearning.Learn(good, []);
        var wild = GainLearning.Learn([.. good, new(new Uncertain(0.05, 0), new Uncertain(-0.30, s_pair))], []);
        Assert.True(Math.Abs(wild.Gain.Value - clean.Gain.Value) < 0.5 * clean.Gain.StandardDeviation);
    }

    [Fact]
    public void Readings_that_are_all_wild_end_within_what_can_be()
    {
        var wild = Enumerable.Range(0, 40).Select(i => new PowerStep(new Uncertain(0.05, 0), new Uncertain(i % 2 == 0 ? -0.9 : 0.9, 0.001))).ToList();
        var learned = GainLearning.Learn(wild, []);
        Assert.InRange(learned.Gain.Value, 0.02, 0.83);
        Assert.True(double.IsFinite(learned.Gain.StandardDeviation) && double.IsFinite(learned.PitchElasticity.Value));
    }

    /// <summary>Computed over the invented boats, three series, exponents of 1 to 1.6 and torque slopes of -2 to -0.5.</summary>
    [Fact]
    public void Gain_and_elasticity_go_together_as_the_prior_has_it()
    {
        var (g, eta) = (new List<double>(), new List<double>());
        foreach (var name in InventedBoats.Names)
            foreach (var series in OpenWaterSeries.All)
                foreach (var m in new[] { 1, 1.25, 1.6 })
                    foreach (var e in new[] { -2, -1.5, -1, -0.5 })
                    {
                        var slopes = new WotBalance(series, InventedBoats.Boat(name, series, InventedBoats.Linear(e), m)).Slopes;
                        g.Add(slopes.Gain);
                        eta.Add(slopes.RateByPitch);
                    }

        var (mg, me) = (g.Average(), eta.Average());
        var covariance = g.Zip(eta, (x, y) => (x - mg) * (y - me)).Average();
        var correlation = covariance / Math.Sqrt(g.Average(x => (x - mg) * (x - mg)) * eta.Average(y => (y - me) * (y - me)));
        Assert.Equal(correlation, LearnedResponse.Prior.Correlation, 0.05);
        Assert.Equal(0.38, mg, 0.05);
        Assert.Equal(-0.73, me, 0.05);
    }

    /// <summary>The ranges in the table of docs/propulsion.md, section 3: four invented boats at their own J over three series.</summary>
    [Fact]
    public void The_slopes_of_props_range_over_boats_and_series_as_the_page_says()
    {
        var slopes = (from name in InventedBoats.Names from series in OpenWaterSeries.All select new WotBalance(series, InventedBoats.Boat(name, series, InventedBoats.Cubic)).Slopes).ToList();
        Assert.Equal((-3.0, -1.4), (Math.Round(slopes.Min(s => s.A), 1), Math.Round(slopes.Max(s => s.A), 1)));
        Assert.Equal((-4.4, -1.7), (Math.Round(slopes.Min(s => s.B), 1), Math.Round(slopes.Max(s => s.B), 1)));
    }

    [Theory]
    [InlineData(double.NaN, 0, 0.01, 0.01)]
    [InlineData(0.02, 0, double.NaN, 0.01)]
    [InlineData(0.02, 0, 0.01, 0)]
    [InlineData(0.02, -1, 0.01, 0.01)]
    [InlineData(3, 0, 0.01, 0.01)]
    public void A_step_that_cannot_be_is_refused(double change, double doubt, double lnRpm, double noise)
    {
        Assert.Throws<ArgumentOutOfRangeException>("power", () => GainLearning.Learn([new(new Uncertain(change, doubt), new Uncertain(lnRpm, noise))], []));
        Assert.Throws<ArgumentOutOfRangeException>("pitch", () => GainLearning.Learn([], [new(new Uncertain(change, doubt), new Uncertain(lnRpm, noise))]));
    }
}
