using CsCheck;

namespace FleetWake.Propulsion.Tests.TwoWay;

/// <summary>Expected numbers worked by hand from the pooled variance within headings.</summary>
public class The_doubt_of_a_mean
{
    [Fact]
    public void Two_runs_cannot_tell_scatter_from_current() =>
        Assert.Null(Runs.Alternating(26, 24).StandardErrorKnots);

    [Fact]
    public void Three_runs_tell_it_from_the_heading_run_twice() => // s2 = 0.4^2/2, times (1 + 4 + 1)/16
        Assert.Equal(Math.Sqrt(0.08 * 6 / 16), Runs.Alternating(26.2, 24, 25.8).StandardErrorKnots!.Value, 1e-12);

    [Fact]
    public void Four_runs_tell_it_from_both_headings() => // s2 = (0.08 + 0.02)/2, times (1 + 9 + 9 + 1)/64
        Assert.Equal(Math.Sqrt(0.05 * 20 / 64), Runs.Alternating(26.2, 24.1, 25.8, 23.9).StandardErrorKnots!.Value, 1e-12);

    [Fact]
    public void Two_each_way_in_any_other_order_have_the_doubt_of_a_plain_mean() => // s2 = 0.05, over 4
        Assert.Equal(
            Math.Sqrt(0.05 / 4),
            Runs.Mean((26.2, 0), (25.8, 0), (24.1, 180), (23.9, 180)).StandardErrorKnots!.Value,
            1e-12);

    [Fact]
    public void A_constant_current_adds_no_doubt() => Gen.Double[-5, 5].Sample(c => Assert.Equal(
        0, Runs.Alternating(25 + c, 25 - c, 25 + c, 25 - c).StandardErrorKnots!.Value, 1e-12));

    [Fact]
    public void A_changing_current_is_taken_for_scatter() => // the linear row of the reference table
        Assert.True(Runs.Alternating(26.0, 23.6, 26.8, 22.8).StandardErrorKnots > 0.3);
}
