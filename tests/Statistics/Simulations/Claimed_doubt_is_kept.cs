namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>
/// Intervals that claim 80 % are asked 20 000 times whether they hold the truth. By chance alone the share has a
/// standard deviation of 0.28 %, so 79 to 81 % is three and a half of them; the project asks for 77 to 83 %.
/// </summary>
public class Claimed_doubt_is_kept
{
    private const int Mountings = 20_000;
    private const double Level = 0.8;

    /// <summary>Engine hours of the trials; the first four on one baseline, the rest on the next.</summary>
    private static readonly double[] s_hours = [0, 18, 30, 55, 70, 82, 110, 131, 140];

    [Fact]
    public void The_slope_is_in_its_interval_80_times_in_100()
    {
        const double b = 0.2; // [rpm/h]
        var held = Fits(b, sd: 8).Count(fit => fit.Slope.Low <= b && b <= fit.Slope.High);
        Assert.InRange(held / (double)Mountings, 0.79, 0.81);
    }

    [Fact]
    public void The_level_of_today_is_in_its_interval_80_times_in_100()
    {
        var truth = Truth(0.2, 150, isSecond: true);
        var held = Fits(0.2, sd: 8).Select(fit => fit.At(150)).Count(at => at.Low <= truth && truth <= at.High);
        Assert.InRange(held / (double)Mountings, 0.79, 0.81);
    }

    /// <summary>Slopes that are nearly always significant, and a search from before the readings: nothing is cut.</summary>
    [Fact]
    public void The_crossing_is_in_its_interval_80_times_in_100()
    {
        const double truth = 400; // [h]
        var y = Truth(0.6, truth, isSecond: true);
        var held = Fits(0.6, sd: 8).Select(fit => fit.Crossing(y, -1e6, 1e9)).Count(c => Holds(c, truth));
        Assert.InRange(held / (double)Mountings, 0.79, 0.81);
    }

    /// <summary>
    /// A drift that hides in the noise, searched from today: two thirds of the slopes are not significant and have no
    /// latest crossing. What is left open holds the truth at least as often as claimed.
    /// </summary>
    [Fact]
    public void A_crossing_with_an_open_end_is_held_at_least_as_often_as_claimed()
    {
        const double truth = 400; // [h]
        var y = Truth(0.1, truth, isSecond: true);
        var crossings = Fits(0.1, sd: 8).Select(fit => fit.Crossing(y, 150, 1e9)).ToArray();
        Assert.InRange(crossings.Count(c => c.HighX is null) / (double)Mountings, 0.6, 0.75);
        Assert.InRange(crossings.Count(c => Holds(c, truth)) / (double)Mountings, 0.79, 0.83);
    }

    [Fact]
    public void The_standard_error_of_the_slope_is_the_scatter_of_slopes()
    {
        var fits = Fits(0.2, sd: 8).ToArray();
        var mean = fits.Average(fit => fit.Slope.Value);
        var observed = fits.Average(fit => Math.Pow(fit.Slope.Value - mean, 2));
        var claimed = fits.Average(fit => Math.Pow(fit.Slope.StandardError, 2));
        Assert.Equal(0.2, mean, 0.003);
        Assert.InRange(observed / claimed, 0.96, 1.04);
    }

    private static bool Holds(Crossing crossing, double truth) =>
        crossing.LowX <= truth && truth <= (crossing.HighX ?? double.PositiveInfinity);

    private static IEnumerable<LineFit> Fits(double slope, double sd)
    {
        var noise = new Noise(1957);
        for (var i = 0; i < Mountings; i++)
        {
            yield return StraightLine.Fit(
                [.. s_hours.Select((x, n) => new LinePoint(x, Truth(slope, x, n > 3) + (sd * noise.Next()), n > 3 ? 1 : 0))],
                Level,
                noiseFloor: 0)!;
        }
    }

    private static double Truth(double slope, double x, bool isSecond) => 5600 + (slope * x) - (isSecond ? 70 : 0);
}
