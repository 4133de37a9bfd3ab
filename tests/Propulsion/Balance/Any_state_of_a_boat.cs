using CsCheck;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.Balance;

/// <summary>What holds for any boat, series, engine and state; computed here, the only source is the two equations.</summary>
public class Any_state_of_a_boat
{
    private static readonly Gen<WotBalance> s_balance =
        from boat in Gen.Int[0, 3]
        from series in Gen.Int[0, 2]
        from e in Gen.Double[-3, 0.3]
        from cubic in Gen.Bool
        from m in Gen.Double[0.8, 2.5]
        select new WotBalance(
            OpenWaterSeries.All[series],
            InventedBoats.Boat(
                InventedBoats.Names[boat], OpenWaterSeries.All[series],
                cubic ? InventedBoats.Cubic : InventedBoats.Linear(e), m));

    private static readonly Gen<double[]> s_direction = Gen.Double[-1, 1].Array[9];

    [Fact]
    public void For_small_changes_the_linear_balance_is_the_full_one() =>
        Gen.Select(s_balance, s_direction, Gen.Double[1e-5, 4e-3]).Sample((balance, direction, size) =>
        {
            var state = State(direction, size);
            var full = BalanceShift.Between(balance.Baseline, balance.Solve(state), balance.Slopes.Kappa);
            var linear = LinearBalance.Shift(balance.Slopes, state);
            // What is left is of the second order: with half the change a quarter of it.
            var left = 60 * size * size;
            Assert.Equal(linear.LnRate, full.LnRate, left);
            Assert.Equal(linear.LnSpeed, full.LnSpeed, left);
            Assert.Equal(linear.Contrast, full.Contrast, left);
        });

    [Fact]
    public void However_far_a_state_goes_the_boat_settles_somewhere_and_both_equations_hold_there() =>
        Gen.Select(s_balance, s_direction).Sample((balance, direction) =>
        {
            var state = new BoatState
            {
                PitchChange = 0.4 * direction[0],
                DiameterChange = 0.3 * direction[1],
                SectionDragChange = 0.0475 + (0.0524 * direction[2]),
                EngineTorqueChange = 0.9 * direction[3],
                ResistanceChange = 4.55 + (5.44 * direction[4]),
                WaterDensityChange = 0.1 * direction[5],
                HubSlip = 0.45 + (0.449 * direction[6]),
                ThrustLoss = 0.2 + (0.699 * direction[7]),
                TorqueLoss = 0.2 + (0.699 * direction[8]),
            };
            var point = balance.Solve(state);
            Assert.True(point.Rate.RevolutionsPerMinute > 0 && point.Speed.Knots > 0);
            var (torque, thrust) = Residuals(balance, state, point);
            Assert.True(
                (Math.Abs(torque) < 1e-9 && Math.Abs(thrust) < 1e-9) || point.Extrapolated, $"{torque} {thrust} {point}");
        });

    [Fact]
    public void A_boat_without_a_change_is_at_its_baseline() => s_balance.Sample(balance =>
    {
        var point = balance.Solve(default);
        Assert.Equal(balance.Baseline.Rate.RevolutionsPerMinute, point.Rate.RevolutionsPerMinute, 1e-9);
        Assert.Equal(balance.Baseline.Speed.Knots, point.Speed.Knots, 1e-11);
    });

    /// <summary>The groups of causes: rate up by lost pitch, diameter or grip, down by lost power and added drag.</summary>
    [Fact]
    public void Every_cause_turns_the_rate_its_own_way() => s_balance.Sample(balance =>
    {
        var baseline = balance.Baseline.Rate.RevolutionsPerMinute;
        Assert.True(Rpm(new() { PitchChange = -0.03 }) > baseline);
        Assert.True(Rpm(new() { DiameterChange = -0.01 }) > baseline);
        Assert.True(Rpm(new() { HubSlip = 0.03 }) > baseline);
        Assert.True(Rpm(new() { ThrustLoss = 0.05, TorqueLoss = 0.04 }) > baseline);
        Assert.True(Rpm(new() { EngineTorqueChange = -0.03 }) < baseline);
        Assert.True(Rpm(new() { ResistanceChange = 0.05 }) < baseline);
        Assert.True(Rpm(new() { SectionDragChange = 0.002 }) < baseline);

        double Rpm(BoatState state) => balance.Solve(state).Rate.RevolutionsPerMinute;
    });

    [Fact]
    public void At_the_rate_where_it_settles_the_speed_needs_no_engine() =>
        Gen.Select(s_balance, s_direction).Sample((balance, direction) =>
        {
            var state = State(direction, 0.03);
            var settled = balance.Solve(state);
            var held = balance.SpeedAt(settled.Rate, state with { EngineTorqueChange = -0.5 });
            Assert.Equal(settled.Speed.Knots, held.Speed.Knots, 1e-9);
        });

    private static BoatState State(double[] direction, double size) => new()
    {
        PitchChange = direction[0] * size,
        DiameterChange = direction[1] * size,
        SectionDragChange = direction[2] * size * 0.1,
        EngineTorqueChange = direction[3] * size,
        ResistanceChange = direction[4] * size,
        WaterDensityChange = direction[5] * size,
        HubSlip = Math.Abs(direction[6]) * size,
        ThrustLoss = direction[7] * size,
        TorqueLoss = direction[8] * size,
    };

    /// <summary>Written out again from the equations, in ratios to the baseline.</summary>
    private static (double Torque, double Thrust) Residuals(WotBalance balance, BoatState state, WotPoint point)
    {
        var start = balance.Baseline;
        var x = point.Rate.RevolutionsPerMinute / start.Rate.RevolutionsPerMinute;
        var (n, D) = (x * (1 - state.HubSlip), 1 + state.DiameterChange);
        var V = point.Speed.Knots / start.Speed.Knots;
        var J = balance.AtBaseline.AdvanceRatio * V / (n * D);
        var shape = start.Shape.WithPitchRatio(start.Shape.PitchRatio * (1 + state.PitchChange) / D);
        var prop = balance.Series.At(shape, J);
        var (dK_T, dK_Q) = SectionDrag.Change(shape, state.SectionDragChange);
        var K_T = (prop.ThrustCoefficient + dK_T) * (1 - state.ThrustLoss) / balance.AtBaseline.ThrustCoefficient;
        var K_Q = (prop.TorqueCoefficient + dK_Q) * (1 - state.TorqueLoss) / balance.AtBaseline.TorqueCoefficient;
        var engine = start.Torque.RelativeTorque(point.Rate) / start.Torque.RelativeTorque(start.Rate);
        var rho = 1 + state.WaterDensityChange;
        return (
            Math.Log(engine * (1 + state.EngineTorqueChange) / (K_Q * rho * n * n * Math.Pow(D, 5))),
            Math.Log(K_T * rho * n * n * Math.Pow(D, 4)
                / ((1 + state.ResistanceChange) * Math.Pow(V, start.ResistanceExponent))));
    }
}
