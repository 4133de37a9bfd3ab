using CsCheck;
using FleetWake.Statistics.Spares;

namespace FleetWake.Statistics.Tests.Spares;

/// <summary>Poisson and negative binomial needs against scipy (computed, see Reference).</summary>
public class What_will_be_asked_for
{
    private static readonly Gen<Need> s_needs = Gen.OneOf(
        Gen.Double[0, 30].Select(Need.Poisson),
        Gen.Double[0, 1].Select(Need.OneWithChance),
        Gen.Select(Gen.Double[0.01, 5], Gen.Double[0, 3], (rate, error) => Need.During(Rate(rate, error * rate), 2)));

    [Fact]
    public void A_rate_in_doubt_makes_the_need_negative_binomial()
    {
        foreach (var cells in ReferenceTable.Rows("gamma_poisson_predictive.csv"))
        {
            var row = cells.Select(ReferenceTable.Number).ToArray();
            var need = Need.During(Rate(row[0] / row[1], Math.Sqrt(row[0]) / row[1]), row[2]);
            Assert.Equal(row[4], need.Enough(row[3]));
            Assert.Equal(row[5], need.AtMost((int)row[4]), 1e-9);
        }
    }

    /// <summary>Mean r H and variance r H (1 + H se^2 / r), closed form.</summary>
    [Fact]
    public void Its_mean_and_variance_are_those_of_the_rate_and_of_chance_together()
    {
        var need = Need.During(Rate(0.4, 0.3), 5);
        Assert.Equal(2, need.Mean, 1e-10);
        Assert.Equal(2 + (25 * 0.09), need.Variance, 1e-9);
    }

    [Fact]
    public void A_rate_without_doubt_makes_it_Poisson()
    {
        var certain = Need.During(Rate(0.4, 0), 5);
        Assert.Equal(Need.Poisson(2).AtMost(3), certain.AtMost(3));
        Assert.Equal(certain.AtMost(3), Need.During(Rate(0.4, 1e-4), 5).AtMost(3), 1e-6);
    }

    [Fact]
    public void Boats_of_one_size_add_up_and_so_do_strikes_and_wear()
    {
        var sum = Need.Sum([Need.Poisson(1.5), Need.Poisson(2.5), Need.None]);
        Assert.Equal(Need.Poisson(4).AtMost(7), sum.AtMost(7), 1e-12);
        Assert.Equal(0.9489, sum.AtMost(7), 5e-5); // as in any table of Poisson

        // Two mountings that may leave their bands: 0, 1 or 2 props, by hand.
        var wear = Need.Sum([Need.OneWithChance(0.3), Need.OneWithChance(0.5)]);
        Assert.Equal([0.35, 0.85, 1], [Math.Round(wear.AtMost(0), 12), Math.Round(wear.AtMost(1), 12), wear.AtMost(2)]);
    }

    [Fact]
    public void Every_need_is_a_distribution() => Gen.Select(s_needs, s_needs).Sample((a, b) =>
    {
        var sum = Need.Sum([a, b]);
        Assert.Equal(a.Mean + b.Mean, sum.Mean, 1e-8);
        Assert.Equal(a.Variance + b.Variance, sum.Variance, 1e-6 * (1 + sum.Variance));
        Assert.Equal(1, sum.AtMost(sum.Greatest), 1e-12);
        foreach (var stock in new[] { 0, 1, 5, 40 })
            Assert.Equal(sum.Mean - stock, sum.ExpectedShort(stock) - sum.ExpectedLeft(stock), 1e-9 * (1 + sum.Mean));
        var enough = sum.Enough(0.9);
        Assert.True(sum.AtMost(enough) >= 0.9 && (enough == 0 || sum.AtMost(enough - 1) < 0.9));
    });

    [Fact]
    public void Large_needs_neither_overflow_nor_vanish()
    {
        var need = Need.Poisson(1000);
        Assert.Equal(1000, need.Mean, 1e-6);
        Assert.Equal(1000, need.Variance, 1e-4);
        Assert.Equal(0, Need.Poisson(0).Mean);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Assert.Throws<ArgumentOutOfRangeException>("mean", () => Need.Poisson(-1));
        Assert.Throws<ArgumentOutOfRangeException>("mean", () => Need.Poisson(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("mean", () => Need.Poisson(1001));
        Assert.Throws<ArgumentOutOfRangeException>("rate", () => Need.During(Rate(-1, 0), 1));
        Assert.Throws<ArgumentOutOfRangeException>("rate", () => Need.During(Rate(1, 6), 1));
        Assert.Throws<ArgumentOutOfRangeException>("rate", () => Need.During(Rate(100, 300), 1));
        Assert.Throws<ArgumentOutOfRangeException>("duration", () => Need.During(Rate(1, 1), -1));
        Assert.Throws<ArgumentOutOfRangeException>("duration", () => Need.During(Rate(100, 1), 100));
        Assert.Throws<ArgumentOutOfRangeException>("chance", () => Need.OneWithChance(1.1));
        Assert.Throws<ArgumentOutOfRangeException>("probability", () => Need.None.Enough(1));
        Assert.Throws<ArgumentOutOfRangeException>("needs", () => Need.Sum([Need.Poisson(600), Need.Poisson(600)]));
    }

    private static Estimate Rate(double value, double error) => new(value, error, value, value, 0.8);
}
