using CsCheck;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Atmosphere;

public class Water_by_its_salt_and_warmth
{
    /// <summary>Check values of UNESCO technical papers in marine science 44 (1983), page 19, at zero pressure; read second-hand.</summary>
    [Theory]
    [InlineData(0, 5, 999.96675)]
    [InlineData(0, 25, 997.04796)]
    [InlineData(35, 5, 1027.67547)]
    [InlineData(35, 25, 1023.34306)]
    public void The_printed_check_values_hold(double salinity, double celsius, double expected) => Assert.Equal(
        expected,
        WaterDensity.OfSalinity(salinity, Temperature.FromCelsius(celsius)).KilogramsPerCubicMetre,
        0.51e-5);

    /// <summary>
    /// ITTC 7.5-02-01-03 (2011): 999.1026 and 1026.0210 kg/m3 at 15 deg C (from memory). Its sea water holds 35.165 g/kg of
    /// salt by a later equation, hence the room.
    /// </summary>
    [Fact]
    public void At_15_degrees_they_are_the_standard_waters_of_ITTC()
    {
        var t = Temperature.FromCelsius(15);
        Assert.Equal(999.1026, WaterDensity.Of(Water.Fresh, t).KilogramsPerCubicMetre, 0.01);
        Assert.Equal(1026.021, WaterDensity.Of(Water.Salt, t).KilogramsPerCubicMetre, 0.06);
    }

    [Fact]
    public void Fresh_water_is_2_6_per_cent_lighter_and_brackish_lies_between() =>
        Gen.Double[0, 35].Select(Temperature.FromCelsius).Sample(t =>
        {
            var (fresh, brackish, salt) = (Rho(Water.Fresh, t), Rho(Water.Brackish, t), Rho(Water.Salt, t));
            Assert.InRange(fresh / salt, 0.972, 0.9755);
            Assert.InRange(brackish, fresh, salt);
        });

    [Fact]
    public void Fresh_water_is_heaviest_at_4_degrees()
    {
        Assert.True(Rho(Water.Fresh, Temperature.FromCelsius(4)) > Rho(Water.Fresh, Temperature.FromCelsius(3)));
        Assert.True(Rho(Water.Fresh, Temperature.FromCelsius(4)) > Rho(Water.Fresh, Temperature.FromCelsius(5)));
    }

    [Fact]
    public void Brine_and_hot_springs_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(
            "practicalSalinity", () => WaterDensity.OfSalinity(43, Temperature.FromCelsius(15)));
        Assert.Throws<ArgumentOutOfRangeException>(
            "temperature", () => WaterDensity.Of(Water.Salt, Temperature.FromCelsius(41)));
        Assert.Throws<ArgumentOutOfRangeException>("water", () => WaterDensity.Of((Water)7, default));
    }

    private static double Rho(Water water, Temperature t) => WaterDensity.Of(water, t).KilogramsPerCubicMetre;
}
