namespace FleetWake.Propulsion.Tests.Units;

/// <summary>
/// Constants exact by definition: international yard and pound agreement (1959), standard gravity of the 3rd CGPM (1901),
/// SI Brochure (BIPM) for Celsius and the prefixes. The horsepower is 550 ft.lbf/s, the metric one 75 kgf.m/s. The inch of
/// mercury is the conventional one (ISO 31-3:1992, from memory).
/// </summary>
public class Exact_units_of_air_and_power
{
    [Fact]
    public void Standard_pressure_is_1013_25_hectopascals_and_29_92_inches_of_mercury()
    {
        var standard = Pressure.FromPascals(101_325);
        Assert.Equal(1013.25, standard.Hectopascals, 12);
        Assert.Equal(101.325, standard.Kilopascals, 13);
        Assert.Equal(29.9213, standard.InchesOfMercury, 4); // 760 mm over 25.4
        Assert.Equal(standard.Pascals, Pressure.FromHectopascals(1013.25).Pascals, 1e-10);
        Assert.Equal(standard.Pascals, Pressure.FromKilopascals(101.325).Pascals, 1e-10);
    }

    [Fact]
    public void An_inch_of_mercury_is_density_times_gravity_times_an_inch() => Assert.Equal(
        (double)(13595.1m * 9.80665m * 0.0254m), Pressure.FromInchesOfMercury(1).Pascals, 1e-9);

    [Theory]
    [InlineData(0, 273.15, 32)]
    [InlineData(100, 373.15, 212)]
    [InlineData(-40, 233.15, -40)]
    [InlineData(25, 298.15, 77)]
    public void Celsius_kelvin_and_fahrenheit_agree_at_known_points(double celsius, double kelvin, double fahrenheit)
    {
        Assert.Equal(kelvin, Temperature.FromCelsius(celsius).Kelvin, 12);
        Assert.Equal(fahrenheit, Temperature.FromCelsius(celsius).Fahrenheit, 12);
        Assert.Equal(celsius, Temperature.FromKelvin(kelvin).Celsius, 12);
        Assert.Equal(celsius, Temperature.FromFahrenheit(fahrenheit).Celsius, 12);
    }

    [Fact]
    public void A_pound_is_0_45359237_kilograms()
    {
        Assert.Equal(0.45359237, Mass.FromPounds(1).Kilograms);
        Assert.Equal(1, Mass.FromKilograms(0.45359237).Pounds);
    }

    [Fact]
    public void A_horsepower_is_550_foot_pounds_force_a_second() => Assert.Equal(
        (double)(550m * 0.3048m * 0.45359237m * 9.80665m), Power.FromHorsepower(1).Watts, 1e-12);

    [Fact]
    public void A_metric_horsepower_is_75_kilogram_force_metres_a_second() =>
        Assert.Equal((double)(75m * 9.80665m), Power.FromMetricHorsepower(1).Watts);

    [Fact]
    public void A_hundred_kilowatts_are_134_1_horsepower_and_136_metric_ones()
    {
        Assert.Equal(134.102, Power.FromKilowatts(100).Horsepower, 3);
        Assert.Equal(135.962, Power.FromKilowatts(100).MetricHorsepower, 3);
        Assert.Equal(100, Power.FromWatts(100_000).Kilowatts);
    }

    [Fact]
    public void A_pound_force_is_a_pound_times_standard_gravity() =>
        Assert.Equal((double)(0.45359237m * 9.80665m), Force.FromPoundsForce(1).Newtons);

    [Fact]
    public void A_density_comes_back_as_it_was_given() =>
        Assert.Equal(1.225, Density.FromKilogramsPerCubicMetre(1.225).KilogramsPerCubicMetre);

    [Fact]
    public void A_prop_behind_a_ratio_of_two_turns_half_as_fast_and_back_again()
    {
        var engine = EngineRate.FromRevolutionsPerMinute(5800);
        var prop = PropRate.Of(engine, new GearRatio(2));
        Assert.Equal(2900, prop.RevolutionsPerMinute);
        Assert.Equal(2900 / 60.0, prop.RevolutionsPerSecond);
        Assert.Equal(engine, prop.AtEngine(new GearRatio(2)));
        Assert.Throws<ArgumentOutOfRangeException>("gear", () => prop.AtEngine(default));
    }

    [Fact]
    public void Each_shows_itself_with_its_unit()
    {
        Assert.Equal("1013.25 hPa", Pressure.FromPascals(101_325).ToString());
        Assert.Equal("18 deg C", Temperature.FromCelsius(18).ToString());
        Assert.Equal("85 kg", Mass.FromKilograms(85).ToString());
        Assert.Equal("4.448 N", Force.FromPoundsForce(1).ToString());
        Assert.Equal("1025 kg/m3", Density.FromKilogramsPerCubicMetre(1025).ToString());
        Assert.Equal("2900 rpm at the prop", PropRate.FromRevolutionsPerMinute(2900).ToString());
    }
}
