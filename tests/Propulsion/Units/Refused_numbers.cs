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
    [InlineData("enginePerPropTurn")]
    public void Below_zero_is_refused_where_the_trade_has_no_such_thing(string parameter) =>
        Assert.Throws<ArgumentOutOfRangeException>(parameter, () => s_doors[parameter](-1e-9));

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
