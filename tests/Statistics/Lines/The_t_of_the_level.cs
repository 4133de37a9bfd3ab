namespace FleetWake.Statistics.Tests.Lines;

public class The_t_of_the_level
{
    /// <summary>The three decimals of any printed table of Student's t, two-sided; from memory.</summary>
    [Theory]
    [InlineData(1, 3.078, 6.314, 12.706, 63.657)]
    [InlineData(2, 1.886, 2.920, 4.303, 9.925)]
    [InlineData(3, 1.638, 2.353, 3.182, 5.841)]
    [InlineData(4, 1.533, 2.132, 2.776, 4.604)]
    [InlineData(5, 1.476, 2.015, 2.571, 4.032)]
    [InlineData(10, 1.372, 1.812, 2.228, 3.169)]
    [InlineData(20, 1.325, 1.725, 2.086, 2.845)]
    [InlineData(30, 1.310, 1.697, 2.042, 2.750)]
    public void It_is_the_printed_one(int freedom, double at80, double at90, double at95, double at99)
    {
        Assert.Equal(at80, T(freedom, 0.80), 0.00051);
        Assert.Equal(at90, T(freedom, 0.90), 0.00051);
        Assert.Equal(at95, T(freedom, 0.95), 0.00051);
        Assert.Equal(at99, T(freedom, 0.99), 0.00051);
    }

    /// <summary>Abramowitz and Stegun 26.7.3 and 26.7.4 (numbers from memory), theta = arctan(t / sqrt(nu)).</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    [InlineData(0.95)]
    [InlineData(0.9999)]
    public void It_satisfies_the_closed_forms_to_eleven_digits(double level)
    {
        var theta3 = Math.Atan(T(3, level) / Math.Sqrt(3));
        Assert.Equal(level, 2 / Math.PI * (theta3 + (Math.Sin(theta3) * Math.Cos(theta3))), 1e-11);
        var theta4 = Math.Atan(T(4, level) / 2);
        Assert.Equal(level, Math.Sin(theta4) * (1 + (Math.Cos(theta4) * Math.Cos(theta4) / 2)), 1e-11);
    }

    [Fact]
    public void With_many_readings_it_tends_to_the_normal_one() =>
        Assert.Equal(1.2816, T(5000, 0.80), 0.0003); // normal 90 % point 1.28155, any table

    [Fact]
    public void Every_interval_reaches_that_many_standard_errors_to_each_side()
    {
        var fit = Line.Fitted(Line.Exact, noiseFloor: 2);
        foreach (var estimate in new[] { fit.Slope, fit.At(7), fit.LevelOf(0, 1) })
        {
            Assert.Equal(0.8, estimate.Level);
            Assert.Equal(fit.LevelQuantile, (estimate.High - estimate.Value) / estimate.StandardError, 1e-9);
            Assert.Equal(fit.LevelQuantile, (estimate.Value - estimate.Low) / estimate.StandardError, 1e-9);
        }
    }

    private static double T(int freedom, double level) => Line.Fitted(
        [.. Enumerable.Range(0, freedom + 2).Select(x => new LinePoint(x, x % 2, 0))], level).LevelQuantile;
}
