namespace FleetWake.Propulsion.Tests.Units;

public class Refused_numbers
{
    private static readonly Dictionary<string, Action<double>> s_doors = new()
    {
        ["metresPerSecond"] = v => Speed.FromMetresPerSecond(v),
        ["knots"] = v => Speed.FromKnots(v),
        ["milesPerHour"] = v => Speed.FromMilesPerHour(v),
        ["kilometresPerHour"] = v => Speed.FromKilometresPerHour(v),
        ["metres"] = v => Length.FromMetres(v),
        ["inches"] = v => Length.FromInches(v),
        ["millimetres"] = v => Length.FromMillimetres(v),
        ["newtonMetres"] = v => Torque.FromNewtonMetres(v),
        ["poundForceFeet"] = v => Torque.FromPoundForceFeet(v),
        ["revolutionsPerMinute"] = v => EngineRate.FromRevolutionsPerMinute(v),
        ["pascals"] = v => Pressure.FromPascals(v),
        ["hectopascals"] = v => Pressure.FromHectopascals(v),
        ["kilopascals"] = v => Pressure.FromKilopascals(v),
        ["inchesOfMercury"] = v => Pressure.FromInchesOfMercury(v),
        ["celsius"] = v => Temperature.FromCelsius(v),
        ["kelvin"] = v => Temperature.FromKelvin(v),
        ["fahrenheit"] = v => Temperature.FromFahrenheit(v),
        ["kilograms"] = v => Mass.FromKilograms(v),
        ["pounds"] = v => Mass.FromPounds(v),
        ["watts"] = v => Power.FromWatts(v),
        ["kilowatts"] = v => Power.FromKilowatts(v),
        ["horsepower"] = v => Power.FromHorsepower(v),
        ["metricHorsepower"] = v => Power.FromMetricHorsepower(v),
        ["kilogramsPerCubicMetre"] = v => Density.FromKilogramsPerCubicMetre(v),
        ["newtons"] = v => Force.FromNewtons(v),
        ["poundsForce"] = v => Force.FromPoundsForce(v),
        ["enginePerPropTurn"] = v => _ = new GearRatio(v),
        ["HeadingDegrees"] = v => _ = new TimedRun(default, v),
    };

    public static TheoryData<string> Doors => [.. s_doors.Keys];

    [Theory]
    [MemberData(nameof(Doors))]
    public void A_number_that_is_not_finite_is_refused_by_name(string parameter)
    {
        foreach (var bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
            Assert.Throws<ArgumentOutOfRangeException>(parameter, () => s_doors[parameter](bad));
    }

    [Theory]
    [InlineData("metres")]
    [InlineData("inches")]
    [InlineData("millimetres")]
    [InlineData("newtonMetres")]
    [InlineData("poundForceFeet")]
    [InlineData("revolutionsPerMinute")]
    [InlineData("pascals")]
    [InlineData("hectopascals")]
    [InlineData("kilopascals")]
    [InlineData("inchesOfMercury")]
    [InlineData("kelvin")]
    [InlineData("kilograms")]
    [InlineData("pounds")]
    [InlineData("watts")]
    [InlineData("kilowatts")]
    [InlineData("horsepower")]
    [InlineData("metricHorsepower")]
    [InlineData("kilogramsPerCubicMetre")]
    [InlineData("newtons")]
    [InlineData("poundsForce")]
    [InlineData("enginePerPropTurn")]
    public void Below_zero_is_refused_where_the_trade_has_no_such_thing(string parameter) =>
        Assert.Throws<ArgumentOutOfRangeException>(parameter, () => s_doors[parameter](-1e-9));

    [Fact]
    public void Absolute_zero_is_no_temperature_and_just_above_it_is_one()
    {
        Assert.Throws<ArgumentOutOfRangeException>("celsius", () => Temperature.FromCelsius(-273.15));
        Assert.Throws<ArgumentOutOfRangeException>("kelvin", () => Temperature.FromKelvin(0));
        Assert.Throws<ArgumentOutOfRangeException>("fahrenheit", () => Temperature.FromFahrenheit(-459.68));
        Assert.Equal(-273.1, Temperature.FromCelsius(-273.1).Celsius);
    }

    [Fact]
    public void A_prop_rate_below_zero_is_refused_as_an_engine_rate_is() => Assert.Throws<ArgumentOutOfRangeException>(
        "revolutionsPerMinute", () => PropRate.FromRevolutionsPerMinute(-1));

    [Fact]
    public void A_speed_may_be_negative_because_a_current_can_set_a_boat_back() =>
        Assert.Equal(-2, Speed.FromKnots(-2).Knots, 15);

    [Fact]
    public void Zero_is_a_length_a_torque_and_a_rate_but_not_a_gear_ratio()
    {
        Assert.Equal(default, Length.FromInches(0));
        Assert.Equal(default, Torque.FromNewtonMetres(0));
        Assert.Equal(default, EngineRate.FromRevolutionsPerMinute(0));
        Assert.Throws<ArgumentOutOfRangeException>("enginePerPropTurn", () => new GearRatio(0));
    }

    [Fact]
    public void A_number_that_overflows_on_conversion_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>("poundForceFeet", () => Torque.FromPoundForceFeet(1.7e308));
}
