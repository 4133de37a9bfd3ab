using FleetWake.Statistics.Rates;

namespace FleetWake.Statistics.Tests.Rates;

public class Limits_of_a_share
{
    /// <summary>Clopper and Pearson's example of 8 of 10 at 95 % as R's binom.test prints it: 0.4439045 to 0.9747893 (from memory).</summary>
    [Fact]
    public void Eight_of_ten_are_those_of_Clopper_and_Pearson()
    {
        var share = BinomialLimits.Share(8, 10, 0.95)!;
        Assert.Equal(0.8, share.Value, 1e-12);
        Assert.Equal(0.4439045, share.Low, 1e-6);
        Assert.Equal(0.9747893, share.High, 1e-6);
    }

    /// <summary>Closed forms: none of n has the upper limit 1 - (a/2)^(1/n), all of n the lower limit (a/2)^(1/n).</summary>
    [Fact]
    public void None_and_all_have_limits_in_closed_form()
    {
        Assert.Equal((0, 1 - Math.Pow(0.1, 1 / 7.0)), (BinomialLimits.Share(0, 7, 0.8)!.Low, Math.Round(BinomialLimits.Share(0, 7, 0.8)!.High, 12)), Near);
        Assert.Equal((Math.Pow(0.1, 1 / 7.0), 1), (BinomialLimits.Share(7, 7, 0.8)!.Low, BinomialLimits.Share(7, 7, 0.8)!.High), Near);
    }

    /// <summary>By the sum of the binomial distribution itself: at each limit so many or more (fewer) come with 10 %.</summary>
    [Fact]
    public void At_a_limit_the_tail_is_what_was_asked_for()
    {
        static double Upper(int k, int n, double p) => Enumerable.Range(k, n - k + 1).Sum(i => MathNet.Numerics.SpecialFunctions.Binomial(n, i) * Math.Pow(p, i) * Math.Pow(1 - p, n - i));
        foreach (var (k, n) in new[] { (1, 5), (19, 24), (3, 40), (39, 40) })
        {
            var share = BinomialLimits.Share(k, n, 0.8)!;
            Assert.Equal(0.1, Upper(k, n, share.Low), 1e-8);
            Assert.Equal(0.1, 1 - Upper(k + 1, n, share.High), 1e-8);
        }
    }

    [Fact]
    public void Without_a_try_there_is_no_share_and_more_than_all_is_refused()
    {
        Assert.Null(BinomialLimits.Share(0, 0, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialLimits.Share(3, 2, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialLimits.Share(1, 2, 1));
    }

    private static bool Near((double, double) a, (double, double) b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9;
}
