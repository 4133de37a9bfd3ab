using FleetWake.Statistics.Rates;

namespace FleetWake.Statistics.Tests.Rates;

/// <summary>
/// The BCG trials (Colditz et al. 1994) pooled by R's metafor (computed), and the batters of Efron and Morris (1975; data
/// from memory, shrinkage as printed); see Reference.
/// </summary>
public class Effects_pooled
{
    private const double Z = 1.959963984540054;

    private static readonly Effect[] s_bcg =
    [
        .. ReferenceTable.Rows("bcg_data.csv")
            .Select(row => new Effect(ReferenceTable.Number(row[5]), Math.Sqrt(ReferenceTable.Number(row[6])))),
    ];

    [Fact]
    public void Mean_spread_and_share_by_restricted_likelihood_are_those_of_metafor()
    {
        var row = ReferenceTable.Rows("bcg_pooled.csv").Single(row => row[0] == "REML");
        var pool = EffectPool.Of(s_bcg, 0.95)!;
        Close(row[1], pool.Mean.Value, 1e-6);
        Close(row[2], pool.PlainStandardError, 1e-6);
        Close(row[5], pool.Tau * pool.Tau, 1e-5);
        Close(row[6], pool.TauSquaredStandardError, 1e-5);
        Close(row[7], pool.Q, 1e-9);
        Close(row[8], 100 * pool.ShareBetween, 1e-6);
    }

    [Fact]
    public void The_limits_of_the_mean_are_those_of_Hartung_and_Knapp()
    {
        var rows = ReferenceTable.Rows("bcg_reml_knha_pi.csv").ToDictionary(row => row[0], row => row[1]);
        var pool = EffectPool.Of(s_bcg, 0.95)!;
        Close(rows["knha_se"], pool.Mean.StandardError, 1e-6);
        Close(rows["knha_lo"], pool.Mean.Low, 1e-6);
        Close(rows["knha_hi"], pool.Mean.High, 1e-6);
        var spread = (ReferenceTable.Number(rows["pi_hi_z"]) - ReferenceTable.Number(rows["pi_lo_z"])) / 2 / Z;
        Assert.Equal(spread, pool.Next.StandardError, 1e-6);
    }

    [Fact]
    public void Each_trial_is_drawn_to_the_mean_as_metafor_draws_it()
    {
        foreach (var (row, each) in ReferenceTable.Rows("bcg_blup_reml.csv").Zip(EffectPool.Of(s_bcg, 0.95)!.Each))
        {
            Close(row[1], each.Value, 1e-5, scale: 0.01);
            Close(row[2], each.StandardError, 1e-5);
        }
    }

    /// <summary>Printed: S = 18.96, the deviation from the grand mean kept 0.209 of.</summary>
    [Fact]
    public void With_equal_doubts_each_is_the_James_Stein_estimate_of_the_batters()
    {
        var rows = ReferenceTable.Rows("efron_morris_1975.csv").ToArray();
        var pool = EffectPool.Of([.. rows.Select(row => new Effect(ReferenceTable.Number(row[5]), 1))], 0.8)!;
        Assert.Equal(18.96, pool.Q, 0.01);
        foreach (var (row, each) in rows.Zip(pool.EachWithCare))
        {
            Assert.Equal(ReferenceTable.Number(row[6]), each.Value, 2e-6);
            Assert.Equal(0.209, (each.Value - pool.Mean.Value) / (ReferenceTable.Number(row[5]) - pool.Mean.Value), 0.001);
        }
    }

    [Fact]
    public void Effects_that_agree_are_one_effect_and_luck_makes_no_mean_surer_than_its_readings()
    {
        var pool = EffectPool.Of([new(85, 20), new(86, 20), new(84, 20)], 0.8)!;
        Assert.Equal(0, pool.Tau);
        Assert.Equal(20 / Math.Sqrt(3), pool.Mean.StandardError, 1e-9);
        Assert.Equal(85, pool.Each[1].Value, 1e-9);
        Assert.Equal(86, pool.EachWithCare[1].Value); // three effects do not tell whether they differ
    }

    [Fact]
    public void One_effect_makes_no_pool_and_a_bad_one_is_named()
    {
        Assert.Null(EffectPool.Of([new(1, 1)], 0.8));
        Assert.NotNull(EffectPool.Of([new(1, 1), new(5, 1)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("effects", () => EffectPool.Of([new(1, 0), new(2, 1)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("effects", () => EffectPool.Of([new(double.NaN, 1), new(2, 1)], 0.8));
    }

    private static void Close(string expected, double actual, double relative, double scale = 0)
    {
        var value = ReferenceTable.Number(expected);
        Assert.Equal(value, actual, relative * Math.Max(Math.Abs(value), scale));
    }
}
