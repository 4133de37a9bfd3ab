using FleetWake.Statistics.Life;

namespace FleetWake.Statistics.Tests.Life;

/// <summary>Kaplan-Meier against R's survival package (computed, see Reference). The unit of age is theirs.</summary>
public class The_share_that_outlives_an_age
{
    [Theory]
    [InlineData("aml", "Maintained")]
    [InlineData("aml", "Nonmaintained")]
    [InlineData("ovarian", "1")]
    [InlineData("ovarian", "2")]
    [InlineData("veteran", "all")]
    public void Shares_Greenwoods_errors_and_limits_on_the_log_scale_are_those_of_R(string set, string stratum)
    {
        var rows = ReferenceTable.Rows("km_greenwood.csv").Where(row => row[0] == set && row[1] == stratum).ToArray();
        var curve = KaplanMeier.Of(Of(set, stratum), 0.95, SurvivalLimits.Log)!;
        Assert.NotEmpty(rows);
        Assert.Equal(rows.Length, curve.Steps.Count);
        foreach (var (row, step) in rows.Zip(curve.Steps))
        {
            Assert.Equal(ReferenceTable.Number(row[2]), step.Hours);
            Assert.Equal(ReferenceTable.Number(row[3]), step.AtRisk);
            Assert.Equal(ReferenceTable.Number(row[4]), step.Ended);
            Lives.Close(ReferenceTable.Number(row[5]), step.Alive.Value, 1e-10);
            if (row[6] == "NA") // R says nothing once none is left
                continue;
            Lives.Close(ReferenceTable.Number(row[6]), step.Alive.StandardError, 1e-9);
            Lives.Close(ReferenceTable.Number(row[7]), step.Alive.Low, 1e-8);
            Lives.Close(ReferenceTable.Number(row[8]), step.Alive.High, 1e-8);
        }
    }

    [Theory]
    [InlineData("Maintained")]
    [InlineData("Nonmaintained")]
    public void Limits_on_the_log_minus_log_scale_are_those_of_R(string stratum)
    {
        var curve = KaplanMeier.Of(Of("aml", stratum), 0.95)!;
        foreach (var row in ReferenceTable.Rows("km_aml_loglog_ci.csv").Where(row => row[0] == stratum && row[2] != "NA"))
        {
            var alive = curve.At(ReferenceTable.Number(row[1]))!;
            Lives.Close(ReferenceTable.Number(row[2]), alive.Low, 1e-8);
            Lives.Close(ReferenceTable.Number(row[3]), alive.High, 1e-8);
        }
    }

    [Fact]
    public void Plain_limits_are_Greenwoods_error_to_both_sides_within_nothing_and_all()
    {
        var plain = KaplanMeier.Of(Lives.AmlByGroup[0], 0.95, SurvivalLimits.Plain)!;
        foreach (var alive in plain.Steps.Select(step => step.Alive))
        {
            Assert.Equal(Math.Max(0, alive.Value - (1.959963985 * alive.StandardError)), alive.Low, 1e-9);
            Assert.Equal(Math.Min(1, alive.Value + (1.959963985 * alive.StandardError)), alive.High, 1e-9);
        }
    }

    /// <summary>The summary that R prints for these groups, from memory: 31 (18 to -) and 23 (8 to -).</summary>
    [Fact]
    public void The_median_and_its_limits_are_the_ages_at_which_the_curve_and_its_limits_pass_one_half()
    {
        Assert.Equal(new LifeReached(31, 18, null), Median(Lives.AmlByGroup[0]));
        Assert.Equal(new LifeReached(23, 8, null), Median(Lives.AmlByGroup[1]));

        static LifeReached Median(Lifetime[] lives) => KaplanMeier.Of(lives, 0.95, SurvivalLimits.Log)!.HoursUntil(0.5);
    }

    [Fact]
    public void Beyond_the_last_age_that_was_followed_nothing_is_said()
    {
        var curve = KaplanMeier.Of(Lives.AmlByGroup[0], 0.8)!;
        Assert.Equal(161, curve.FollowedToHours);
        Assert.NotNull(curve.At(161));
        Assert.Null(curve.At(162));
    }

    [Fact]
    public void Once_none_is_left_none_comes_back_and_a_few_that_are_gone_do_not_prove_that_none_can_last()
    {
        var curve = KaplanMeier.Of(Lives.AmlByGroup[1], 0.8)!;
        var alive = curve.At(1000)!;
        Assert.Equal(0, alive.Value);
        Assert.InRange(alive.High, 0.1, curve.Steps[^2].Alive.High);
        Assert.True(alive.StandardError > 0);
    }

    /// <summary>Ten that all lasted: the exact lower limit for a share, 0.1^(1/10) (Clopper and Pearson 1934).</summary>
    [Fact]
    public void Where_none_has_ended_yet_the_lower_limit_is_the_exact_one_for_so_many()
    {
        var curve = KaplanMeier.Of([.. Enumerable.Repeat(new Lifetime(300, false), 10)], 0.8)!;
        Assert.Equal(new Estimate(1, curve.At(200)!.StandardError, Math.Pow(0.1, 0.1), 1, 0.8), curve.At(200));
        Assert.Equal(new LifeReached(null, null, null), curve.HoursUntil(0.5));
        Assert.Null(curve.MeanWithin(300));
    }

    /// <summary>Four props by hand; the third was followed from 150 h, so it was not there to end at 100 h.</summary>
    [Fact]
    public void A_prop_followed_from_some_age_on_is_at_risk_from_there()
    {
        var curve = KaplanMeier.Of(
            [new(100, true), new(200, true), new Lifetime(250, true) { FromHours = 150 }, new(300, false)], 0.8)!;
        Assert.Equal([3, 3, 2], curve.Steps.Select(step => step.AtRisk));
        Assert.Equal([2.0 / 3, 4.0 / 9, 2.0 / 9], curve.Steps.Select(step => step.Alive.Value), Near);

        static bool Near(double a, double b) => Math.Abs(a - b) < 1e-12;
    }

    /// <summary>
    /// By hand: ends at 1, 2, 3 h and one seen to 4 h. Area 1 + 3/4 + 2/4 + 1/4; areas from each step on 1.5, 0.75, 0.25;
    /// variance 1.5^2/12 + 0.75^2/6 + 0.25^2/2. With no censoring this is the mean of min(T, 4) and its variance with n.
    /// </summary>
    [Fact]
    public void The_mean_within_a_horizon_is_the_area_under_the_curve()
    {
        var mean = KaplanMeier.Of([new(1, true), new(2, true), new(3, true), new(4, false)], 0.8)!.MeanWithin(4)!;
        Assert.Equal(2.5, mean.Value, 1e-12);
        var variance = mean.StandardError * mean.StandardError;
        Assert.Equal((2.25 / 12) + (0.5625 / 6) + (0.0625 / 2), variance, 1e-12);
        Assert.Equal(new double[] { 1, 2, 3, 4 }.Sum(t => (t - 2.5) * (t - 2.5)) / 16, variance, 1e-12);
    }

    [Fact]
    public void No_prop_makes_no_curve_and_a_bad_one_is_named()
    {
        Assert.Null(KaplanMeier.Of([], 0.8));
        foreach (var hours in new[] { 0, -1, double.NaN, double.PositiveInfinity })
            Assert.Throws<ArgumentOutOfRangeException>("lives", () => KaplanMeier.Of([new(hours, true)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(
            "lives", () => KaplanMeier.Of([new Lifetime(100, true) { FromHours = 100 }], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("level", () => KaplanMeier.Of([new(1, true)], 1));
    }

    private static Lifetime[] Of(string set, string stratum) => (set, stratum) switch
    {
        ("aml", "Maintained") => Lives.AmlByGroup[0],
        ("aml", _) => Lives.AmlByGroup[1],
        ("ovarian", "1") => Lives.OvarianByTreatment[0],
        ("ovarian", _) => Lives.OvarianByTreatment[1],
        _ => Lives.Veteran,
    };
}
