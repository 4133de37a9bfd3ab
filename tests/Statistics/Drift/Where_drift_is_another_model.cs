using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Rates;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>
/// Models of other trades that the drift estimator holds as special cases, when their variances are given. Source and status of
/// each: Reference/PROVENANCE.md.
/// </summary>
public class Where_drift_is_another_model
{
    /// <summary>
    /// A level that walks at random, y = mu + e, mu(t + 1) = mu(t) + w, is a series with a step between every two trials and no
    /// drift: its level at the last trial is the Kalman filter's, its evidence the filter's likelihood.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(24)]
    [InlineData(25)]
    [InlineData(100)]
    public void The_Nile_has_the_filtered_level_of_Durbin_and_Koopman(int years)
    {
        const double noise = 15099, step = 1469.1, before = 1e7; // variances
        var rows = ReferenceTable.Rows("nile_local_level.csv").Take(years).Select(row => row.Select(ReferenceTable.Number).ToArray()).ToArray();
        var series = KnownNoise.Series(1, rows.Select(row => (row[0], row[1], 0.0)), rows.Skip(1).Select(row => row[0] - 0.5));
        var settings = KnownNoise.Settings(series, Math.Sqrt(noise), Math.Sqrt(before)) with { LevelShare = 0, RepitchSdRpm = Math.Sqrt(step) };
        var none = new double[SlopeGrid.Count];
        none[-SlopeGrid.Lowest] = 1;

        var found = DriftEstimator.Assess(series, SlopePrior.Of(none), settings);

        Close(rows[^1][6], found.LevelRpm!.Value, 1e-8);
        Close(rows[^1][7], Math.Pow(found.LevelRpm.StandardError, 2), 1e-8);
        Close(rows.Sum(row => -0.5 * (Math.Log(2 * Math.PI * row[5]) + (row[4] * row[4] / row[5]))), found.LogEvidence, 1e-8);
    }

    /// <summary>
    /// Piecewise line, normal and inverse gamma priors. Its mean does not hang on sigma, and given sigma its covariance is
    /// sigma^2 V, V = (a / b) scale^2. The prior is on the level at the first trial: so the hours run backwards and the RPM
    /// upside down, and the step, which belongs to the later hours, is an effect of temperature. A known slope of 10 is added, so
    /// that the doubt falls in the middle of the grid of drifts.
    /// </summary>
    [Fact]
    public void A_conjugate_piecewise_line_has_the_same_mean_and_covariance()
    {
        const double sigma = 38, top = 1e4, added = 10;
        var prior = ReferenceTable.Rows("nig_prior.csv").ToDictionary(row => row[0], row => ReferenceTable.Number(row[1]));
        var known = ReferenceTable.Rows("nig_piecewise.csv").ToDictionary(row => row[0], row => ReferenceTable.Number(row[1]));
        var points = ReferenceTable.Rows("nig_series.csv").Select(row => (H: ReferenceTable.Number(row[0]), Y: ReferenceTable.Number(row[1])));
        var series = KnownNoise.Series(top - prior["m0_intercept"], points.Select(p => (10 - p.H, top - p.Y - (added * p.H), p.H > 3 ? 1.0 : 0)));
        var r = KnownNoise.Median(series);
        var settings = KnownNoise.Settings(series, sigma, sigma * prior["V0_intercept(sd/sigma)"]) with
        {
            TemperatureMeanShare = -prior["m0_step"] / r,
            TemperatureSdShare = sigma * prior["V0_step(sd/sigma)"] / r,
        };

        var found = DriftEstimator.Assess(series, KnownNoise.NormalSlope(prior["m0_slope"] + added, sigma * prior["V0_slope(sd/sigma)"]), settings);

        double Sd(string parameter) => sigma * known[$"t_scale_{parameter}"] * Math.Sqrt(known["a_n"] / known["b_n"]);
        var (slope, sd) = KnownNoise.Slope(found);
        Close(known["mean_slope_per_100h"], slope - added, 1e-7);
        Close(Sd("slope_per_100h"), sd, 1e-6);
        Close(known["mean_intercept"], top - found.LevelRpm!.Value, 1e-9);
        Close(Sd("intercept"), found.LevelRpm.StandardError, 1e-6);
    }

    /// <summary>
    /// Growth of 27 children (Potthoff and Roy 1964), R's lme: random level and slope, correlated. The drift estimator has no
    /// such correlation, but there is an age at which level and slope have none: x runs backwards to a last reading there, which
    /// a step of any size frees of all meaning.
    /// </summary>
    [Fact]
    public void Each_child_has_the_slope_that_lme_predicts()
    {
        const double k = 30, top = 1e4;
        var lme = Lme();
        var apart = 11 - (lme["corr"] * lme["sd_intercept"] / lme["sd_slope"]); // age
        var levelSd = lme["sd_intercept"] * Math.Sqrt(1 - (lme["corr"] * lme["corr"]));
        var level = top - (k * (lme["fix_intercept"] + (lme["fix_slope"] * (apart - 11))));
        var prior = KnownNoise.NormalSlope(k * lme["fix_slope"], k * lme["sd_slope"]);
        var predicted = ReferenceTable.Rows("orthodont_blup.csv").ToDictionary(row => row[0], row => ReferenceTable.Number(row[2]));
        foreach (var child in Children())
        {
            var series = KnownNoise.Series(level, child.Select(c => (20 - c.Age, top - (k * c.Distance), 0.0)).Append((20 - apart, top, 0)), 12.5);
            var settings = KnownNoise.Settings(series, k * lme["sigma"], k * levelSd) with { RepitchSdRpm = 1e7 };

            var (slope, _) = KnownNoise.Slope(DriftEstimator.Assess(series, prior, settings));

            Assert.Equal(predicted[child.Key], (slope / k) - lme["fix_slope"], 2e-5);
        }
    }

    /// <summary>All were measured at the same four ages: so their own slopes, pooled, are the mixed model's.</summary>
    [Fact]
    public void The_slopes_of_all_children_pool_to_the_mean_and_spread_of_lme()
    {
        var lme = Lme();
        var slopes = Children().Select(child => new Effect(child.Sum(c => (c.Age - 11) * c.Distance) / 20, lme["sigma"] / Math.Sqrt(20)));

        var pool = EffectPool.Of([.. slopes], 0.8)!;

        Close(lme["fix_slope"], pool.Mean.Value, 1e-6);
        Close(lme["se_slope"], pool.PlainStandardError, 1e-5);
        Close(lme["sd_slope"], pool.Tau, 1e-4);
    }

    private static Dictionary<string, double> Lme() =>
        ReferenceTable.Rows("orthodont_lme_reml.csv").ToDictionary(row => row[0], row => ReferenceTable.Number(row[1]));

    private static IEnumerable<IGrouping<string, (double Age, double Distance)>> Children() => ReferenceTable.Rows("orthodont.csv")
        .GroupBy(row => row[2], row => (ReferenceTable.Number(row[1]), ReferenceTable.Number(row[0])));

    private static void Close(double expected, double actual, double relative) => Assert.Equal(expected, actual, relative * Math.Abs(expected));
}
