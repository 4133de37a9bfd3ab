using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Tests.Balance;

/// <summary>
/// The four invented boats of the reference tables. A rated rate of 5500 rpm, gear loss 3 %, sea water of 1025 kg/m3, no wake; the
/// baseline speed is the one at which rated torque is just what the series takes (f_Q = 1).
/// </summary>
internal static class InventedBoats
{
    internal static readonly EngineRate Rated = EngineRate.FromRevolutionsPerMinute(5500);

    internal static readonly string[] Names =
        ["A 15hp 5.0 m skiff", "B 50hp 5.5 m skiff 2.08", "B2 50hp 5.5 m skiff 2.33", "C 150hp 7.0 m CC"];

    internal static readonly TorqueCurve Cubic = TorqueCurve.Cubic(Rated);

    internal static WotBaseline Boat(string name, OpenWaterSeries series, TorqueCurve torque, double? m = null)
    {
        var (hp, gear, diameter, pitch, area, exponent) = Particulars(name);
        var boat = new WotBaseline
        {
            Rate = Rated,
            Speed = Speed.FromKnots(1),
            Gear = new GearRatio(gear),
            Diameter = Length.FromInches(diameter),
            Shape = new BladeShape(3, area, pitch / diameter),
            Torque = torque,
            ResistanceExponent = m ?? exponent,
        };
        return boat with { Speed = SelfConsistent(series, boat, hp) };
    }

    internal static TorqueCurve Linear(double slope) => TorqueCurve.Linear(Rated, slope);

    private static (double Hp, double Gear, double Diameter, double Pitch, double Area, double M) Particulars(string name) =>
        name.Split(' ')[0] switch
        {
            "A" => (15, 2.08, 9.25, 9, 0.55, 1.06),
            "B" => (50, 2.08, 11.5, 13, 0.55, 1.14),
            "B2" => (50, 2.33, 13, 14.5, 0.55, 1.14),
            "C" => (150, 2.0, 14.5, 17, 0.60, 1.33),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such boat."),
        };

    /// <summary>By halving: torque falls with speed.</summary>
    private static Speed SelfConsistent(OpenWaterSeries series, WotBaseline boat, double hp)
    {
        var (slow, fast) = (0.3, 0.99);
        var end = series.Curve(boat.Shape).EndOfThrust!.Value * boat.Diameter.Metres
            * PropRate.Of(boat.Rate, boat.Gear).RevolutionsPerSecond; // [m/s]
        for (var i = 0; i < 60; i++)
        {
            var middle = (slow + fast) / 2;
            var f_Q = new WotBalance(series, boat with { Speed = Speed.FromMetresPerSecond(middle * end) })
                .TorqueCalibration(Power.FromHorsepower(hp), 0.97);
            if (f_Q < 1)
                slow = middle;
            else
                fast = middle;
        }

        return Speed.FromMetresPerSecond(slow * end);
    }
}
