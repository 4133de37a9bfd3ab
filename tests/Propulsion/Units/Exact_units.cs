namespace FleetWake.Propulsion.Tests.Units;

/// <summary>
/// Constants exact by definition: SI Brochure (BIPM) for knot and minute, international yard and pound agreement
/// (1959) for inch, foot, mile and pound, 3rd CGPM (1901) for standard gravity.
/// </summary>
public class Exact_units
{
    [Fact]
    public void A_knot_is_1852_metres_an_hour()
    {
        Assert.Equal(1852.0 / 3600.0, Speed.FromKnots(1).MetresPerSecond);
        Assert.Equal(1.852, Speed.FromKnots(1).KilometresPerHour, 15);
    }

    [Fact]
    public void A_mile_an_hour_is_0_44704_metres_a_second() =>
        Assert.Equal(0.44704, Speed.FromMilesPerHour(1).MetresPerSecond);

    [Fact]
    public void A_knot_is_1852_over_1609_344_miles_an_hour() =>
        Assert.Equal(1.150779448, Speed.FromKnots(1).MilesPerHour, 9);

    [Fact]
    public void Thirty_six_kilometres_an_hour_are_ten_metres_a_second() =>
        Assert.Equal(10, Speed.FromKilometresPerHour(36).MetresPerSecond, 14);

    [Fact]
    public void An_inch_is_0_0254_metres_and_25_4_millimetres()
    {
        Assert.Equal(0.0254, Length.FromInches(1).Metres);
        Assert.Equal(25.4, Length.FromInches(1).Millimetres, 14);
        Assert.Equal(0.0062, Length.FromMillimetres(6.2).Metres);
    }

    [Fact]
    public void A_pound_force_foot_is_foot_times_pound_times_standard_gravity() =>
        Assert.Equal((double)(0.3048m * 0.45359237m * 9.80665m), Torque.FromPoundForceFeet(1).NewtonMetres);

    [Fact]
    public void Twenty_five_pound_force_feet_are_33_895_newton_metres() =>
        Assert.Equal(33.895, Torque.FromPoundForceFeet(25).NewtonMetres, 3);

    [Fact]
    public void Sixty_revolutions_a_minute_are_one_a_second() =>
        Assert.Equal(1, EngineRate.FromRevolutionsPerMinute(60).RevolutionsPerSecond);
}
