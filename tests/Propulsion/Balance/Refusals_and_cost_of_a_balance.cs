using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.Balance;

public class Refusals_and_cost_of_a_balance
{
    private static readonly WotBaseline s_boat =
        InventedBoats.Boat(InventedBoats.Names[3], OpenWaterSeries.Gawn, InventedBoats.Cubic);

    private static readonly WotBalance s_balance = new(OpenWaterSeries.Gawn, s_boat);

    public static TheoryData<WotBaseline, string> NoBoats => new()
    {
        { s_boat with { Rate = default }, "Rate" },
        { s_boat with { Rate = EngineRate.FromRevolutionsPerMinute(9000) }, "Rate" }, // the cubic has no torque there
        { s_boat with { Speed = Speed.FromKnots(-3) }, "Speed" },
        { s_boat with { Gear = default }, "Gear" },
        { s_boat with { Diameter = default }, "Diameter" },
        { s_boat with { Shape = default }, "Shape" },
        { s_boat with { Torque = default }, "Torque" },
        { s_boat with { Water = default }, "Water" },
        { s_boat with { ResistanceExponent = 0 }, "ResistanceExponent" },
        { s_boat with { ResistanceExponent = double.NaN }, "ResistanceExponent" },
        { s_boat with { WakeFraction = 0.9 }, "WakeFraction" },
    };

    public static TheoryData<BoatState, string> NoStates => new()
    {
        { new BoatState { PitchChange = -1 }, "PitchChange" },
        { new BoatState { DiameterChange = double.NaN }, "DiameterChange" },
        { new BoatState { SectionDragChange = 1 }, "SectionDragChange" },
        { new BoatState { EngineTorqueChange = -1 }, "EngineTorqueChange" },
        { new BoatState { ResistanceChange = -1 }, "ResistanceChange" },
        { new BoatState { WaterDensityChange = double.PositiveInfinity }, "WaterDensityChange" },
        { new BoatState { HubSlip = -0.1 }, "HubSlip" },
        { new BoatState { ThrustLoss = 1 }, "ThrustLoss" },
        { new BoatState { TorqueLoss = 1 }, "TorqueLoss" },
    };

    [Theory]
    [MemberData(nameof(NoBoats))]
    public void A_baseline_that_cannot_be_is_refused_by_name(WotBaseline baseline, string name) => Assert.Equal(
        name, Assert.Throws<ArgumentOutOfRangeException>(() => new WotBalance(OpenWaterSeries.Gawn, baseline)).ParamName);

    [Theory]
    [MemberData(nameof(NoStates))]
    public void A_state_that_cannot_be_is_refused_by_name(BoatState state, string name)
    {
        Assert.Equal(name, Assert.Throws<ArgumentOutOfRangeException>(() => s_balance.Solve(state)).ParamName);
        Assert.Equal(
            name, Assert.Throws<ArgumentOutOfRangeException>(() => LinearBalance.Shift(s_balance.Slopes, state)).ParamName);
    }

    [Fact]
    public void A_pitch_without_thrust_at_the_measured_slip_is_refused_with_the_way_out()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            new WotBalance(OpenWaterSeries.Gawn, s_boat with { Speed = Speed.FromKnots(50) }));
        Assert.Contains("effective pitch must be higher", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(-7.0)]
    [InlineData(double.NaN)]
    public void A_torque_slope_that_cannot_be_is_refused(double slope) => Assert.Equal(
        "slope", Assert.Throws<ArgumentOutOfRangeException>(() => InventedBoats.Linear(slope)).ParamName);

    /// <summary>P/P_r = x + x^2 - x^3 has its top at x = 1, so that torque falls there as rate rises.</summary>
    [Fact]
    public void The_cubic_engine_has_rated_torque_and_a_slope_of_minus_one_at_its_rated_rate()
    {
        Assert.Equal(1, InventedBoats.Cubic.RelativeTorque(InventedBoats.Rated), 1e-15);
        Assert.Equal(-1, InventedBoats.Cubic.SlopeAt(InventedBoats.Rated), 1e-15);
        Assert.Equal(0, InventedBoats.Cubic.RelativeTorque(EngineRate.FromRevolutionsPerMinute(10_000)));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            InventedBoats.Cubic.SlopeAt(EngineRate.FromRevolutionsPerMinute(10_000)));
    }

    /// <summary>By hand: T V = P eta_m eta_0 at the self-consistent baseline, for 150 hp, 3 % gear loss and the eta_0 there.</summary>
    [Fact]
    public void Thrust_times_speed_is_what_the_engine_gives_less_the_losses()
    {
        var useful = s_balance.BaselineThrust.Newtons * s_boat.Speed.MetresPerSecond;
        Assert.Equal(Power.FromHorsepower(150).Watts * 0.97 * s_balance.AtBaseline.Efficiency, useful, 1e-3);
    }

    [Fact]
    public void A_solve_allocates_nothing()
    {
        var state = new BoatState { PitchChange = -0.05, EngineTorqueChange = -0.02, SectionDragChange = 0.002 };
        _ = s_balance.Solve(state);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            _ = s_balance.Solve(state);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }
}
