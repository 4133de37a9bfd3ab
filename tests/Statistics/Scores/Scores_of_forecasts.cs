using FleetWake.Statistics.Scores;

namespace FleetWake.Statistics.Tests.Scores;

public class Scores_of_forecasts
{
    /// <summary>Worked by hand from the definition: Gneiting and Raftery 2007, equation 43, alpha = 0.2.</summary>
    [Theory]
    [InlineData(5550, 100)]
    [InlineData(5500, 100)]
    [InlineData(5620, 300)]
    [InlineData(5490, 200)]
    public void An_interval_costs_its_width_and_ten_times_what_it_missed_by(double value, double score) =>
        Assert.Equal(score, IntervalScore.Of(5500, 5600, 0.8, value), 1e-9);

    /// <summary>The score is proper: of all intervals the quantiles at alpha/2 and 1 - alpha/2 cost least on average (the same paper, section 6.2).</summary>
    [Fact]
    public void Nobody_gains_by_another_interval_than_the_one_believed()
    {
        double[] uniform = [.. Enumerable.Range(0, 1000).Select(i => (i + 0.5) / 1000)];
        double Mean(double low, double high) => uniform.Average(x => IntervalScore.Of(low, high, 0.8, x));
        Assert.All(new[] { (0.05, 0.9), (0.15, 0.9), (0.1, 0.85), (0.1, 0.95), (0.0, 1.0), (0.3, 0.7) }, other => Assert.True(Mean(other.Item1, other.Item2) > Mean(0.1, 0.9)));
    }

    [Theory]
    [InlineData(double.NaN, 1, 0.8, 0)]
    [InlineData(2, 1, 0.8, 0)]
    [InlineData(0, 1, 1, 0)]
    [InlineData(0, 1, 0.8, double.PositiveInfinity)]
    public void What_is_no_interval_or_no_value_has_no_score(double low, double high, double level, double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => IntervalScore.Of(low, high, level, value));

    /// <summary>The form with one class; by hand: (0.3^2 + 0.2^2 + 0.6^2) / 3.</summary>
    [Fact]
    public void Chances_cost_the_square_of_what_they_were_off_by()
    {
        Assert.Equal(0.49 / 3, BrierScore.Of([(0.7, true), (0.2, false), (0.6, false)])!.Value, 1e-12);
        Assert.Equal(0.25, BrierScore.Of([(0.5, true), (0.5, false)])!.Value, 1e-12); // who never knows
        Assert.Equal(0, BrierScore.Of([(1, true), (0, false)]));
        Assert.Null(BrierScore.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => BrierScore.Of([(1.1, true)]));
    }
}
