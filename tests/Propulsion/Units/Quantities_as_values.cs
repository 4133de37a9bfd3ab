using System.Globalization;
using CsCheck;

namespace FleetWake.Propulsion.Tests.Units;

public class Quantities_as_values
{
    /// <summary>Two bits of a double, and room for a third.</summary>
    private const double Relative = 1e-15;

    private static readonly Gen<double> s_anySize = Gen.Double[-1e6, 1e6];
    private static readonly Gen<double> s_fromZeroUp = Gen.Double[0, 1e6];

    [Fact]
    public void A_speed_comes_back_in_the_unit_it_was_given_in() => s_anySize.Sample(v =>
    {
        Assert.Equal(v, Speed.FromMetresPerSecond(v).MetresPerSecond);
        Same(v, Speed.FromKnots(v).Knots);
        Same(v, Speed.FromMilesPerHour(v).MilesPerHour);
        Same(v, Speed.FromKilometresPerHour(v).KilometresPerHour);
    });

    [Fact]
    public void A_length_and_a_torque_come_back_in_the_unit_they_were_given_in() => s_fromZeroUp.Sample(q =>
    {
        Assert.Equal(q, Length.FromMetres(q).Metres);
        Same(q, Length.FromInches(q).Inches);
        Same(q, Length.FromMillimetres(q).Millimetres);
        Assert.Equal(q, Torque.FromNewtonMetres(q).NewtonMetres);
        Same(q, Torque.FromPoundForceFeet(q).PoundForceFeet);
    });

    [Fact]
    public void Rpm_come_back_to_the_bit_so_that_a_reading_on_the_edge_of_a_band_stays_on_it() =>
        s_fromZeroUp.Sample(n => Assert.Equal(n, EngineRate.FromRevolutionsPerMinute(n).RevolutionsPerMinute));

    [Fact]
    public void Equal_quantities_are_equal_values()
    {
        Assert.Equal(Speed.FromKnots(22.5), Speed.FromKnots(22.5));
        Assert.NotEqual(Speed.FromKnots(22.5), Speed.FromMilesPerHour(22.5));
        Assert.Equal(default, Speed.FromKnots(0));
        Assert.Equal(new GearRatio(2.08), new GearRatio(2.08));
    }

    [Fact]
    public void A_quantity_shows_itself_with_its_unit_and_a_point_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = "," } };
            Assert.Equal("22.5 kn", Speed.FromKnots(22.5).ToString());
            Assert.Equal("330.2 mm", Length.FromInches(13).ToString());
            Assert.Equal("33.895 N.m", Torque.FromPoundForceFeet(25).ToString());
            Assert.Equal("5500.5 rpm", EngineRate.FromRevolutionsPerMinute(5500.5).ToString());
            Assert.Equal("2.08:1", new GearRatio(2.08).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void Same(double expected, double actual) =>
        Assert.InRange(actual, expected - (Math.Abs(expected) * Relative), expected + (Math.Abs(expected) * Relative));
}
