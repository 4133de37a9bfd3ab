using CsCheck;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>The closed form of the odds held against plain numerical integration over sizes. Computed here.</summary>
public class The_odds_of_a_cause
{
    /// <summary>scipy.stats.norm.cdf of scipy 1.10.1.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.8413447460685429)]
    [InlineData(-1.96, 0.024997895148220435)]
    [InlineData(2.5, 0.9937903346742238)]
    [InlineData(-4, 3.167124183311986e-05)]
    public void The_normal_curve_is_that_of_another_program(double x, double below)
    {
        Assert.Equal(below, NormalCurve.Below(x), below * 1e-12);
        Assert.Equal(Math.Log(below), NormalCurve.LogBelow(x), 1e-11);
    }

    /// <summary>scipy.stats.norm.logsf.</summary>
    [Fact]
    public void The_far_tail_keeps_its_logarithm()
    {
        Assert.Equal(-53.23128515051247, NormalCurve.LogBelow(-10), 1e-10);
        Assert.Equal(-454.32124395634327, NormalCurve.LogBelow(-30), 1e-9);
        Assert.True(double.IsFinite(NormalCurve.LogBelow(-1e6)));
    }

    [Fact]
    public void The_closed_form_is_the_integral_over_sizes() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[-8, 8], Gen.Double[0.01, 0.3]).Sample((p, t, w) =>
        {
            var q = t * Math.Sqrt(p + 1);
            var (sum, mean, square, n, reach) = (0.0, 0.0, 0.0, 50_000, 12 * w);
            for (var i = 0; i < n; i++)
            {
                var s = (i + 0.5) * reach / n;
                var f = Math.Exp((s * q) - (s * s * p / 2) - (s * s / (2 * w * w))) * 2 / (w * Math.Sqrt(2 * Math.PI)) * reach / n;
                (sum, mean, square) = (sum + f, mean + (f * s), square + (f * s * s));
            }

            var size = HalfNormalSize.Of(p, q, w);
            Assert.Equal(Math.Log(sum), size.LogOdds, 1e-5);
            Assert.Equal(mean / sum, size.Mean, 1e-5);
            Assert.Equal(square / sum, size.MeanSquare, 1e-5);
        }, iter: 50);

    /// <summary>One boat, one reading, one model: everything by hand but for the sums over sizes.</summary>
    [Fact]
    public void The_posterior_is_the_prior_times_the_likelihood()
    {
        var (x, v, sx, sv) = (0.025, -0.01, 0.008, 0.016);
        var finding = Diagnosis.Of(new CauseCase
        {
            Models = [Tern.Console],
            Baselines = [new("tern", "P1", new ChangeDoubt(0, 0))],
            WideOpen = [new("tern", "P1", x, v, new ChangeDoubt(sx, sv))],
        });
        var expected = new Dictionary<Cause, double> { [Cause.None] = Likelihood(x, v, sx * sx, 0, sv * sv) };
        var (wxx, wxv, wvv) = (sx * sx, 0.0, sv * sv);
        foreach (var prior in CausePrior.Weak.Where(p => CauseFacts.Single.Contains(p.Cause)))
        {
            var of = CauseResponse.Of(prior.Cause, Tern.Console);
            var (n, sum, reach) = (20_000, 0.0, 8 * prior.Width);
            for (var i = 0; i < n; i++)
            {
                var s = (i + 0.5) * reach / n;
                sum += Likelihood(x - (s * of.LnRpm), v - (s * of.LnSpeed), sx * sx, 0, sv * sv)
                    * 2 * NormalCurve.Density(s / prior.Width) / prior.Width * reach / n;
            }

            expected[prior.Cause] = sum;
            var share = 2 * prior.Width * prior.Width / 8; // two of eight causes
            (wxx, wxv, wvv) = (wxx + (share * of.LnRpm * of.LnRpm), wxv + (share * of.LnRpm * of.LnSpeed), wvv + (share * of.LnSpeed * of.LnSpeed));
        }

        expected[Cause.Several] = Likelihood(x, v, wxx, wxv, wvv);
        Assert.Equal(10, finding.Suspects.Count);
        Assert.All(finding.Suspects, s => Assert.Equal(expected[s.Cause] / expected.Values.Sum(), s.Probability, 1e-6));
        Assert.Equal(1, finding.Suspects.Sum(s => s.Probability), 1e-12);
    }

    [Fact]
    public void Probabilities_stay_finite_however_far_the_reading_lies() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[1e-6, 0.1]).Sample((x, v, sd) =>
        {
            var finding = Diagnosis.Of(Tern.Case(new WideOpenChange("tern", "P1", x, v, new ChangeDoubt(sd, sd))));
            Assert.Equal(1, finding.Suspects.Sum(s => s.Probability), 1e-9);
            Assert.All(finding.Suspects, s => Assert.True(double.IsFinite(s.Size.Value) && double.IsFinite(s.Size.StandardDeviation)));
        });

    [Fact]
    public void The_order_of_trials_does_not_matter()
    {
        WideOpenChange[] runs = [.. Tern.Runs("tern", "P1", 0.03, -0.01, 2), .. Tern.Runs("tern", "P1", 0.02, 0.01, 3)];
        Assert.Equal(
            Diagnosis.Of(Tern.Case(runs)).Suspects.Select(s => Math.Round(s.Probability, 12)),
            Diagnosis.Of(Tern.Case([.. Enumerable.Reverse(runs)])).Suspects.Select(s => Math.Round(s.Probability, 12)));
    }

    private static double Likelihood(double x, double v, double xx, double xv, double vv)
    {
        var det = (xx * vv) - (xv * xv);
        return Math.Exp(-((vv * x * x) - (2 * xv * x * v) + (xx * v * v)) / (2 * det)) / (2 * Math.PI * Math.Sqrt(det));
    }
}
