namespace FleetWake.Statistics.Tests;

public class A_step_of_the_gauge
{
    [Fact]
    public void A_tachometer_in_steps_of_100_rpm_leaves_29_rpm_of_doubt() => // JCGM 100:2008 F.2.2.1: u = 0.29 dx
        Assert.Equal(29, GaugeStep.StandardUncertainty(100), 0.5);

    [Fact]
    public void It_is_the_step_over_the_root_of_twelve() => // JCGM 100:2008 4.3.7, equation 7, a = 1/2
        Assert.Equal(1 / Math.Sqrt(12), GaugeStep.StandardUncertainty(1), 1e-15);

    [Fact]
    public void It_is_what_rounding_does_to_evenly_spread_readings()
    {
        var errors = Enumerable.Range(0, 10_000).Select(i => ((i + 0.5) / 10_000) - 0.5).ToArray(); // within one step
        Assert.Equal(Math.Sqrt(errors.Average(e => e * e)), GaugeStep.StandardUncertainty(1), 1e-8);
    }

    [Fact]
    public void A_gauge_without_steps_adds_none() => Assert.Equal(0, GaugeStep.StandardUncertainty(0));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_step_that_is_none_is_refused(double step) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(step), () => GaugeStep.StandardUncertainty(step));
}
