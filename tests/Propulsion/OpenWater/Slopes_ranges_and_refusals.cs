using CsCheck;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.OpenWater;

public class Slopes_ranges_and_refusals
{
    private static readonly Gen<(OpenWaterSeries Series, BladeShape Shape, double J)> s_point = Gen.Select(
        Gen.Int[0, 2].Select(i => OpenWaterSeries.All[i]), Gen.Double[0.5, 1.05], Gen.Double[0.8, 1.4], Gen.Double[0.05, 1.2],
        (series, area, pitch, J) => (series, new BladeShape(3, area, pitch), J));

    /// <summary>By central differences, whose own error is of the order of the step squared.</summary>
    [Fact]
    public void Every_slope_is_the_derivative_of_its_value() => s_point.Sample(x =>
    {
        const double step = 1e-5;
        var here = x.Series.At(x.Shape, x.J);
        var (before, after) = (x.Series.At(x.Shape, x.J - step), x.Series.At(x.Shape, x.J + step));
        Assert.Equal((after.ThrustCoefficient - before.ThrustCoefficient) / (2 * step), here.ThrustByAdvance, 1e-7);
        Assert.Equal((after.TorqueCoefficient - before.TorqueCoefficient) / (2 * step), here.TorqueByAdvance, 1e-7);
        var flatter = x.Series.At(x.Shape.WithPitchRatio(x.Shape.PitchRatio - step), x.J);
        var steeper = x.Series.At(x.Shape.WithPitchRatio(x.Shape.PitchRatio + step), x.J);
        Assert.Equal((steeper.ThrustCoefficient - flatter.ThrustCoefficient) / (2 * step), here.ThrustByPitch, 1e-7);
        Assert.Equal((steeper.TorqueCoefficient - flatter.TorqueCoefficient) / (2 * step), here.TorqueByPitch, 1e-7);
    });

    [Fact]
    public void A_prop_standing_in_the_water_has_thrust_and_no_efficiency()
    {
        var bollard = OpenWaterSeries.WageningenB.At(new(3, 0.65, 1.0), 0);
        Assert.True(bollard.ThrustCoefficient > 0.4);
        Assert.Equal(0, bollard.Efficiency);
        Assert.Equal(1, bollard.TrueSlip);
    }

    [Fact]
    public void At_the_end_of_thrust_there_is_none_and_a_little_torque()
    {
        var curve = OpenWaterSeries.Gawn.Curve(new(3, 0.6, 1.2));
        var end = curve.At(curve.EndOfThrust!.Value);
        Assert.Equal(0, end.ThrustCoefficient, 1e-12);
        Assert.True(end.TorqueCoefficient > 0);
        Assert.InRange(end.AdvanceRatio, 1.2, 1.5);
    }

    /// <summary>Limits: University of Michigan report 237; Blount and Hubble 1981 from memory; Radojcic 1988 as transcribed.</summary>
    [Theory]
    [InlineData("B", 3, 0.55, 1.2, 0.9, false)]
    [InlineData("B", 3, 0.55, 1.41, 0.9, true)]
    [InlineData("B", 3, 0.29, 1.2, 0.9, true)]
    [InlineData("Gawn", 3, 0.55, 1.2, 0.9, false)]
    [InlineData("Gawn", 4, 0.55, 1.2, 0.9, true)]
    [InlineData("Gawn", 3, 0.55, 1.2, 0.2, true)]
    [InlineData("Gawn", 3, 0.55, 1.6, 1.2, true)]
    [InlineData("KCA", 3, 0.55, 1.6, 1.2, false)]
    [InlineData("KCA", 3, 0.55, 1.6, 0.26, true)]
    [InlineData("KCA", 3, 0.55, 2.1, 1.2, true)]
    [InlineData("KCA", 3, 0.55, 1.2, 1.6, true)] // past the end of thrust
    public void Outside_its_range_a_value_is_marked(string series, int blades, double area, double pitch, double J, bool marked) =>
        Assert.Equal(marked, SeriesTables.Named(series).At(new(blades, area, pitch), J).Extrapolated);

    [Theory]
    [InlineData(1, 0.55, 1.0, "blades")]
    [InlineData(8, 0.55, 1.0, "blades")]
    [InlineData(3, 0.0, 1.0, "expandedAreaRatio")]
    [InlineData(3, 0.55, 0.0, "pitchRatio")]
    [InlineData(3, 0.55, -1.0, "pitchRatio")]
    [InlineData(3, 0.55, double.NaN, "pitchRatio")]
    [InlineData(3, double.NaN, 1.0, "expandedAreaRatio")]
    public void A_shape_that_cannot_be_is_refused_by_name(int blades, double area, double pitch, string name) =>
        Assert.Equal(name, Assert.Throws<ArgumentOutOfRangeException>(() => new BladeShape(blades, area, pitch)).ParamName);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(3.1)]
    [InlineData(double.NaN)]
    public void An_advance_ratio_that_cannot_be_is_refused(double J) => Assert.Equal(
        "advanceRatio",
        Assert.Throws<ArgumentOutOfRangeException>(() => OpenWaterSeries.Gawn.At(new(3, 0.55, 1), J)).ParamName);

    [Fact]
    public void No_shape_at_all_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OpenWaterSeries.Gawn.Curve(default));

    /// <summary>Computed here; the order of magnitude is that of Oosterveld and van Oossanen 1975, figure from memory.</summary>
    [Fact]
    public void A_larger_Reynolds_number_costs_less_torque_and_hardly_moves_thrust()
    {
        var shape = new BladeShape(3, 0.55, 1.2);
        var model = OpenWaterSeries.WageningenB.Curve(shape).At(0.9);
        var atOwn = OpenWaterSeries.WageningenB.Curve(shape, 2e6).At(0.9);
        var large = OpenWaterSeries.WageningenB.Curve(shape, 2e7).At(0.9);
        Assert.Equal(model.TorqueCoefficient, atOwn.TorqueCoefficient, 2e-4);
        Assert.Equal(model.ThrustCoefficient, atOwn.ThrustCoefficient, 1e-3);
        Assert.InRange(large.TorqueCoefficient / model.TorqueCoefficient, 0.95, 1.0);
        Assert.InRange(large.ThrustCoefficient / model.ThrustCoefficient, 0.99, 1.05);
    }

    [Fact]
    public void A_Reynolds_number_is_refused_where_it_means_nothing()
    {
        Assert.Throws<ArgumentException>(() => OpenWaterSeries.Gawn.Curve(new(3, 0.55, 1), 3e6));
        Assert.Throws<ArgumentOutOfRangeException>(() => OpenWaterSeries.WageningenB.Curve(new(3, 0.55, 1), 1e5));
    }

    [Fact]
    public void A_curve_and_its_points_allocate_nothing()
    {
        var shape = new BladeShape(3, 0.55, 1.2);
        _ = OpenWaterSeries.Gawn.Curve(shape).At(0.9);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            _ = OpenWaterSeries.Gawn.Curve(shape).At(0.9);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }
}
