using FleetWake.Statistics.Charts;

namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>
/// While nothing changes, Hawkins's scores are independent and standard normal whatever the level and the noise, so the
/// run length is that of a chart that knows both (Hawkins 1987), after the two readings without a score.
/// </summary>
public class A_chart_that_starts_itself_signals_as_seldom_as_one_that_knows
{
    private const int Runs = 1000;
    private const int Longest = 400;

    private static readonly IReadOnlyList<SelfStartingPoint>[] s_runs = [.. Drawn()];

    [Fact]
    public void Scores_have_mean_nothing_and_variance_one_from_the_third_reading_on()
    {
        foreach (var n in new[] { 2, 3, 4, 10, 50 })
        {
            var scores = s_runs.Select(run => run[n].Score!.Value).ToArray();
            Assert.Equal(0, scores.Average(), 3.5 / Math.Sqrt(Runs));
            Assert.Equal(1, scores.Average(u => u * u), 3.5 * Math.Sqrt(2.0 / Runs));
        }
    }

    [Fact]
    public void One_score_says_nothing_of_the_next() =>
        Assert.Equal(0, s_runs.Average(run => run[3].Score!.Value * run[4].Score!.Value), 3.5 / Math.Sqrt(Runs));

    /// <summary>h 2 and k 0.5, so that a run of 400 is all but never cut short.</summary>
    [Fact]
    public void The_mean_run_without_cause_is_the_one_of_the_integral_equation()
    {
        var lengths = s_runs.Select(run =>
            run.Select((point, i) => point.Sums.SignalsRise ? i + 1 : Longest).Min() - 2).ToArray();
        var expected = RunLength.OfOneSidedCusum(0.5, 2);
        Assert.Equal(expected, lengths.Average(), 3.5 * expected / Math.Sqrt(Runs));
    }

    private static IEnumerable<IReadOnlyList<SelfStartingPoint>> Drawn()
    {
        var draws = new Draws(1987);
        for (var i = 0; i < Runs; i++)
        {
            yield return SelfStartingCusum.Run(
                [.. Enumerable.Range(0, Longest).Select(_ => new ChartReading(5500 + (37 * draws.Normal()), 0))], 0.5, 2);
        }
    }
}
