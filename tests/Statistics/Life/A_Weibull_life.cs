using FleetWake.Statistics.Life;

namespace FleetWake.Statistics.Tests.Life;

/// <summary>
/// Weibull by maximum likelihood against R's survreg (computed, see Reference), whose mu is log eta and sigma 1/k; with
/// delayed entry and likelihood-ratio limits against scipy (computed, Reference/make/life_and_rates.py).
/// </summary>
public class A_Weibull_life
{
    private static readonly Lifetime[] s_late =
    [
        new(310, true), new(452, true), new(120, false), new Lifetime(505, true) { FromHours = 200 },
        new Lifetime(640, false) { FromHours = 350 }, new Lifetime(275, true) { FromHours = 150 }, new(388, false),
        new Lifetime(710, true) { FromHours = 90 }, new(95, true), new Lifetime(530, false) { FromHours = 410 },
    ];

    [Theory]
    [InlineData("aml")]
    [InlineData("ovarian")]
    [InlineData("lung")]
    [InlineData("veteran")]
    public void Shape_scale_their_errors_and_the_likelihood_are_those_of_R(string set)
    {
        var row = Row(set);
        var life = WeibullFit.Of(
            set switch { "aml" => Lives.Aml, "ovarian" => Lives.Ovarian, "lung" => Lives.Lung, _ => Lives.Veteran }, 0.8)!;
        Lives.Close(row[4], life.Shape.Value, 1e-8);
        Lives.Close(row[5], life.ScaleHours.Value, 1e-8);
        Lives.Close(row[6], life.ScaleHours.StandardError / life.ScaleHours.Value, 1e-6);
        Lives.Close(row[7], life.Shape.StandardError / life.Shape.Value, 1e-6);
        Lives.Close(row[8], life.LogLikelihood, 1e-10);
    }

    [Fact]
    public void Groups_that_share_a_shape_are_Rs_regression_on_the_group()
    {
        var row = Row("aml_by_x");
        var lives = WeibullFit.OfGroups(Lives.AmlByGroup, 0.8)!;
        Lives.Close(row[4], lives[0]!.Shape.Value, 1e-8);
        Lives.Close(row[5], lives[0]!.ScaleHours.Value, 1e-8);
        Lives.Close(row[6], lives[0]!.ScaleHours.StandardError / lives[0]!.ScaleHours.Value, 1e-6);
        Lives.Close(row[7], lives[0]!.Shape.StandardError / lives[0]!.Shape.Value, 1e-6);
        Lives.Close(row[2], Math.Log(lives[1]!.ScaleHours.Value / lives[0]!.ScaleHours.Value), 1e-8);
        Lives.Close(row[8], lives[1]!.LogLikelihood, 1e-10);
    }

    [Fact]
    public void Lives_followed_from_some_age_on_and_limits_of_the_likelihood_ratio_are_those_of_scipy()
    {
        var life = WeibullFit.Of(s_late, 0.8)!;
        var rows = ReferenceTable.Rows("weibull_delayed_entry.csv").ToDictionary(row => row[0]);
        Lives.Close(ReferenceTable.Number(rows["log_likelihood"][1]), life.LogLikelihood, 1e-9);
        Same("shape", life.Shape);
        Same("scale", life.ScaleHours);
        Same("hours_until_0.5", life.HoursUntil(0.5));
        Same("hours_until_0.9", life.HoursUntil(0.9));
        Same("alive_at_300", life.AliveAt(300));

        void Same(string quantity, Estimate actual)
        {
            Lives.Close(ReferenceTable.Number(rows[quantity][1]), actual.Value, 1e-5);
            Lives.Close(ReferenceTable.Number(rows[quantity][2]), actual.Low, 1e-5);
            Lives.Close(ReferenceTable.Number(rows[quantity][3]), actual.High, 1e-5);
        }
    }

    [Fact]
    public void Hours_in_another_unit_change_the_scale_and_nothing_else()
    {
        var life = WeibullFit.Of(s_late, 0.8)!;
        var minutes = WeibullFit.Of(
            [.. s_late.Select(x => x with { Hours = x.Hours * 60, FromHours = x.FromHours * 60 })], 0.8)!;
        Lives.Close(life.Shape.Value, minutes.Shape.Value, 1e-9);
        Lives.Close(life.Shape.High, minutes.Shape.High, 1e-7);
        Lives.Close(life.ScaleHours.Low * 60, minutes.ScaleHours.Low, 1e-7);
        Lives.Close(life.MeanHours * 60, minutes.MeanHours, 1e-9);
        Lives.Close(life.AliveAt(300).StandardError, minutes.AliveAt(18_000).StandardError, 1e-8);
    }

    [Fact]
    public void The_share_alive_and_the_age_are_each_others_inverse_and_the_limits_too()
    {
        var life = WeibullFit.Of(s_late, 0.8)!;
        var median = life.HoursUntil(0.5);
        Lives.Close(0.5, life.AliveAt(median.Value).Value, 1e-10);
        Lives.Close(0.5, life.AliveAt(median.Low).Low, 1e-5);
        Lives.Close(0.5, life.AliveAt(median.High).High, 1e-5);
    }

    [Fact]
    public void Far_beyond_what_was_seen_the_share_is_still_a_share()
    {
        var life = WeibullFit.Of(s_late, 0.8)!;
        foreach (var hours in new[] { 1e-6, 1, 1e4, 1e9 })
        {
            var alive = life.AliveAt(hours);
            Assert.InRange(alive.Low, 0, alive.Value);
            Assert.InRange(alive.High, alive.Value, 1);
            Assert.True(double.IsFinite(alive.StandardError));
        }
    }

    [Fact]
    public void A_group_of_which_none_has_ended_lends_no_shape_and_gets_no_scale()
    {
        var lives = WeibullFit.OfGroups([s_late, [new(400, false), new(500, false)]], 0.8)!;
        Assert.Null(lives[1]);
        Lives.Close(WeibullFit.Of(s_late, 0.8)!.Shape.Value, lives[0]!.Shape.Value, 1e-9);
    }

    [Fact]
    public void Too_few_ends_or_all_at_one_age_make_no_life()
    {
        Assert.Null(WeibullFit.Of([], 0.8));
        Assert.Null(WeibullFit.Of([new(100, true), new(200, false)], 0.8));
        Assert.Null(WeibullFit.Of([new(100, true), new(100, true), new(100, true)], 0.8));
        Assert.Throws<ArgumentException>("groups", () => WeibullFit.OfGroups([], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("groups", () => WeibullFit.Of([new(double.NaN, true)], 0.8));
    }

    [Fact]
    public void Two_ends_among_ten_leave_the_scale_all_but_without_an_upper_bound()
    {
        var life = WeibullFit.Of([new(20, true), new(200, true), .. Enumerable.Repeat(new Lifetime(160, false), 8)], 0.95)!;
        Assert.InRange(life.ScaleHours.Low, 160, life.ScaleHours.Value);
        Assert.True(life.ScaleHours.High > 1000 * life.ScaleHours.Value);
        Assert.False(double.IsNaN(life.HoursUntil(0.1).High));
    }

    private static double[] Row(string set) =>
    [
        .. ReferenceTable.Rows("weibull_mle.csv").Single(row => row[0] == set)
            .Select((cell, i) => i == 0 || cell == "NA" ? double.NaN : ReferenceTable.Number(cell)),
    ];
}
