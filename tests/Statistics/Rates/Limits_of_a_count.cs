using FleetWake.Statistics.Rates;

namespace FleetWake.Statistics.Tests.Rates;

/// <summary>Garwood's exact limits (1936), computed by the chi-square identity (see Reference).</summary>
public class Limits_of_a_count
{
    [Fact]
    public void Limits_at_four_levels_are_Garwoods()
    {
        foreach (var cells in ReferenceTable.Rows("garwood_poisson_ci.csv"))
        {
            var row = cells.Select(ReferenceTable.Number).ToArray();
            foreach (var (level, column) in new[] { (0.8, 1), (0.9, 3), (0.95, 5), (0.99, 7) })
            {
                var rate = PoissonLimits.Rate(new Tally((int)row[0], 1), level)!;
                Assert.Equal(row[column], rate.Low, 1e-6);
                Assert.Equal(row[column + 1], rate.High, 1e-6);
            }
        }
    }

    /// <summary>0 gives -log 0.025 = 3.689, the rule of three at 90 %: 2.996 (closed form).</summary>
    [Fact]
    public void None_counted_is_not_none_ever()
    {
        var rate = PoissonLimits.Rate(new Tally(0, 1), 0.95)!;
        Assert.Equal(0, rate.Low);
        Assert.Equal(-Math.Log(0.025), rate.High, 1e-12);
        Assert.True(rate.StandardError > 0);
    }

    [Fact]
    public void Ten_times_the_exposure_is_a_tenth_of_the_rate()
    {
        var one = PoissonLimits.Rate(new Tally(7, 1), 0.8)!;
        var ten = PoissonLimits.Rate(new Tally(7, 10), 0.8)!;
        Assert.Equal([one.Value / 10, one.StandardError / 10, one.Low / 10, one.High / 10],
            [ten.Value, ten.StandardError, ten.Low, ten.High]);
    }

    /// <summary>Gamma of shape a: a + z sqrt(a) + (z^2 - 1)/3, the expansion of Cornish and Fisher (1937; from
    /// memory).</summary>
    [Fact]
    public void A_large_count_has_limits_like_those_of_the_normal_distribution()
    {
        const double z = 1.2815515655446004;
        var rate = PoissonLimits.Rate(new Tally(1_000_000, 1), 0.8)!;
        Assert.Equal(1e6 - (1000 * z) + (((z * z) - 1) / 3), rate.Low, 0.01);
        Assert.Equal(1e6 + 1 + (1000 * z) + (((z * z) - 1) / 3), rate.High, 0.01);
    }

    [Fact]
    public void Without_exposure_there_is_no_rate_and_a_bad_tally_is_named()
    {
        Assert.Null(PoissonLimits.Rate(new Tally(0, 0), 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("tally", () => PoissonLimits.Rate(new Tally(1, 0), 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("tally", () => PoissonLimits.Rate(new Tally(-1, 1), 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("tally", () => PoissonLimits.Rate(new Tally(1, double.NaN), 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("level", () => PoissonLimits.Rate(new Tally(1, 1), 1.2));
    }
}
