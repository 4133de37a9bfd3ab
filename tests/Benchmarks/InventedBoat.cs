using FleetWake.Propulsion;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Benchmarks;

/// <summary>An invented centre console with 150 hp at 5500 rpm and a 14.5 x 17 prop of three blades.</summary>
internal static class InventedBoat
{
    internal static readonly WotBaseline Baseline = new()
    {
        Rate = EngineRate.FromRevolutionsPerMinute(5500),
        Speed = Speed.FromKnots(33.9),
        Gear = new GearRatio(2.0),
        Diameter = Length.FromInches(14.5),
        Shape = new BladeShape(3, 0.60, 17 / 14.5),
        Torque = TorqueCurve.Cubic(EngineRate.FromRevolutionsPerMinute(5500)),
        ResistanceExponent = 1.33,
    };

    /// <summary>States that differ from one to the next, so that nothing is measured that was kept from before; also in
    /// scipy_balance.py.</summary>
    internal static BoatState State(int i) => new()
    {
        PitchChange = -0.06 + (0.005 * (i % 25)),
        EngineTorqueChange = -0.01 * (i % 7),
        ResistanceChange = 0.05 * (i % 5),
    };
}
