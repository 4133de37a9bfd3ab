namespace FleetWake.Statistics.Tests.Lines;

public class When_there_is_no_line
{
    [Fact]
    public void Two_readings_leave_no_degree_of_freedom() => Assert.Null(Fit(new(0, 1, 0), new(1, 2, 0)));

    [Fact]
    public void No_readings_carry_no_line() => Assert.Null(Fit());

    [Fact]
    public void Each_stretch_costs_a_degree_of_freedom()
    {
        Assert.Null(Fit(new(0, 1, 0), new(1, 2, 0), new(2, 9, 1)));
        Assert.Equal(1, Fit(new(0, 1, 0), new(1, 2, 0), new(2, 9, 1), new(3, 9, 1))!.DegreesOfFreedom);
    }

    [Fact]
    public void Readings_at_one_x_in_each_stretch_tell_no_slope() => // 0.1 thrice has a mean that is not 0.1
        Assert.Null(Fit(new(0.1, 1, 0), new(0.1, 2, 0), new(0.1, 3, 0), new(7, 9, 1), new(7, 8, 1)));

    [Fact]
    public void Readings_on_one_line_claim_no_more_than_the_noise_floor_allows()
    {
        var fit = Line.Fitted(Line.Exact, noiseFloor: 2);
        Assert.Equal(2, fit.ResidualSd);
        Assert.Equal(10, fit.Slope.Value, 1e-12);
        Assert.Equal(2 / Math.Sqrt(10), fit.Slope.StandardError, 1e-12);
        Assert.Equal(2 / Math.Sqrt(5), fit.At(2).StandardError, 1e-12);
        Assert.Equal(3, fit.DegreesOfFreedom);
    }

    [Fact]
    public void Without_a_floor_they_claim_certainty()
    {
        var fit = Line.Fitted(Line.Exact);
        Assert.Equal(0, fit.ResidualSd, 1e-12);
        Assert.Equal(fit.Slope.Value, fit.Slope.High, 1e-12);
    }

    [Fact]
    public void A_floor_below_the_scatter_changes_nothing()
    {
        LinePoint[] points = [new(0, 1, 0), new(1, 5, 0), new(2, 3, 0), new(3, 9, 0)];
        Assert.Equal(Line.Fitted(points).Slope, Line.Fitted(points, noiseFloor: 0.5).Slope);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(0.99991)]
    [InlineData(-0.8)]
    [InlineData(80)]
    [InlineData(double.NaN)]
    public void A_level_outside_its_range_is_refused(double level) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(level), () => StraightLine.Fit(Line.Exact, level, 0));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_noise_floor_outside_its_range_is_refused(double floor) =>
        Assert.Throws<ArgumentOutOfRangeException>("noiseFloor", () => StraightLine.Fit(Line.Exact, 0.8, floor));

    [Fact]
    public void A_reading_that_is_not_finite_or_too_large_to_square_is_refused()
    {
        foreach (var bad in new[] { double.NaN, double.PositiveInfinity, 1e200 })
        {
            Assert.Throws<ArgumentException>("points", () => Fit([.. Line.Exact, new(bad, 0, 0)]));
            Assert.Throws<ArgumentException>("points", () => Fit([.. Line.Exact, new(0, bad, 0)]));
        }
    }

    [Fact]
    public void A_place_that_is_not_finite_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(
        "x", () => Line.Fitted(Line.Exact).At(double.NaN));

    private static LineFit? Fit(params LinePoint[] points) => StraightLine.Fit(points, 0.8, 0);
}
