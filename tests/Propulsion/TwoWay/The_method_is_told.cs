using CsCheck;

namespace FleetWake.Propulsion.Tests.TwoWay;

public class The_method_is_told
{
    [Fact]
    public void No_runs_have_no_mean() => Assert.Throws<ArgumentException>("runs", () => TwoWayMean.Of([]));

    [Fact]
    public void One_run_is_that_run_with_its_current_in_it() => Assert.Equal(
        new MeanSpeed(Speed.FromKnots(25), MeanSpeedMethod.SingleRun, null, null), Runs.Mean((25, 40)));

    [Theory]
    [InlineData(2, MeanSpeedMethod.DoubleRun)]
    [InlineData(3, MeanSpeedMethod.ThreeRuns)]
    [InlineData(4, MeanSpeedMethod.FourRuns)]
    [InlineData(5, MeanSpeedMethod.MeanOfHeadings)]
    [InlineData(6, MeanSpeedMethod.MeanOfHeadings)]
    public void Alternating_runs_are_weighted_by_their_number(int count, MeanSpeedMethod method)
    {
        var mean = Runs.Alternating([.. Enumerable.Repeat(25.0, count)]);
        Assert.Equal(method, mean.Method);
        Assert.Equal(25, mean.Speed.Knots, 1e-12);
    }

    [Fact]
    public void Runs_that_do_not_alternate_are_averaged_by_heading()
    {
        var mean = Runs.Mean((26, 0), (27, 0), (24, 180));
        Assert.Equal(MeanSpeedMethod.MeanOfHeadings, mean.Method);
        Assert.Equal(25.25, mean.Speed.Knots, 1e-12); // (26.5 + 24) / 2, not 77 / 3
    }

    /// <summary>The 30 degrees are common practice, no source.</summary>
    [Theory]
    [InlineData(0, 180, 0)]
    [InlineData(0, 210, 30)]
    [InlineData(0, 150, 30)]
    [InlineData(350, 175, 5)]
    [InlineData(355, -170, 15)]
    [InlineData(710, 530, 0)]
    public void Headings_within_30_degrees_of_opposition_are_out_and_back(double way, double back, double error)
    {
        var mean = Runs.Mean((26, way), (24, back));
        Assert.Equal(MeanSpeedMethod.DoubleRun, mean.Method);
        Assert.Equal(error, mean.LargestHeadingErrorDegrees!.Value, 1e-12);
        Assert.Equal(25, mean.Speed.Knots, 1e-12);
    }

    [Theory]
    [InlineData(0, 210.1, 30.1)]
    [InlineData(0, 90, 90)]
    [InlineData(0, 0, 180)]
    [InlineData(10, 350, 160)]
    public void Headings_further_off_are_not_opposed_and_keep_their_current(double way, double back, double error)
    {
        var mean = Runs.Mean((26, way), (24, back));
        Assert.Equal(MeanSpeedMethod.HeadingsNotOpposed, mean.Method);
        Assert.Equal(error, mean.LargestHeadingErrorDegrees!.Value, 1e-9);
        Assert.Null(mean.StandardErrorKnots);
        Assert.Equal(25, mean.Speed.Knots, 1e-12);
    }

    [Fact]
    public void One_run_across_spoils_the_set()
    {
        var mean = Runs.Mean((26, 0), (24, 180), (26, 0), (25, 100));
        Assert.Equal(MeanSpeedMethod.HeadingsNotOpposed, mean.Method);
        Assert.Equal(25.25, mean.Speed.Knots, 1e-12);
        Assert.Equal(80, mean.LargestHeadingErrorDegrees!.Value, 1e-12);
    }

    [Fact]
    public void Each_run_back_must_oppose_each_run_out_and_not_the_first_alone() => Assert.Equal(
        MeanSpeedMethod.HeadingsNotOpposed, Runs.Mean((26, 0), (24, 205), (26, 335), (24, 180)).Method);

    [Fact]
    public void Turning_the_chart_changes_nothing() => Gen.Double[-720, 720].Sample(turn =>
    {
        var mean = Runs.Mean((26, 10 + turn), (24, 200 + turn), (26.5, 5 + turn));
        Assert.Equal(MeanSpeedMethod.ThreeRuns, mean.Method);
        Assert.Equal(15, mean.LargestHeadingErrorDegrees!.Value, 1e-9);
        Assert.Equal(25.125, mean.Speed.Knots, 1e-12);
    });
}
