using System.Runtime.CompilerServices;

namespace FleetWake.Propulsion.OpenWater;

/// <summary>K_T and K_Q of one prop over J, and where they hold: as little as a solver's loop needs.</summary>
/// <param name="Thrust">K_T(J).</param>
/// <param name="Torque">K_Q(J).</param>
/// <param name="InRange">The shape lies within the series.</param>
/// <param name="Lowest">Lowest J of the series [1].</param>
/// <param name="Highest">Highest J of the series [1].</param>
internal readonly record struct LoadCurve(Cubic Thrust, Cubic Torque, bool InRange, double Lowest, double Highest)
{
    /// <summary>
    /// Far outside its range a series may run out of torque before it runs out of thrust. Held at this floor, the engine races on and
    /// a solve still ends at a finite place, which is marked extrapolated.
    /// </summary>
    private const double LeastTorque = 1e-6;

    private const int Steps = 60;

    private const double Step = OpenWaterCurve.HighestAdvance / Steps;

    /// <summary>Constants added, as drag of the sections adds them, and then a share of what there is left over.</summary>
    internal LoadCurve Changed(double dK_T, double dK_Q, double thrustLeft, double torqueLeft) => this with
    {
        Thrust = Thrust.Raised(dK_T).Times(thrustLeft),
        Torque = Torque.Raised(dK_Q).Times(torqueLeft),
    };

    internal bool Extrapolated(double J, double K_T, double K_Q) =>
        !InRange || J < Lowest || J > Highest || K_T < 0 || K_Q <= LeastTorque;

    /// <summary>K_T, K_Q and their logarithmic slopes by J; the slopes are of use only where there is thrust.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Loads At(double J)
    {
        var (K_T, K_Q) = (Thrust.At(J), Torque.At(J)); // [1]
        return K_Q > LeastTorque
            ? new Loads(K_T, K_Q, J * Thrust.SlopeAt(J) / K_T, J * Torque.SlopeAt(J) / K_Q)
            : new Loads(K_T, LeastTorque, J * Thrust.SlopeAt(J) / K_T, 0);
    }

    /// <summary>
    /// The first J of a walk in steps of 0.05 at which a curve is no longer above zero; null when there is none up to 3. A cubic has few
    /// bends, and a walk finds the first zero, not any.
    /// </summary>
    internal static double? NoLongerAboveZero(in Cubic curve)
    {
        for (var i = 0; i <= Steps; i++)
        {
            var J = i * Step; // [1]
            if (!(curve.At(J) > 0))
                return J;
        }

        return null;
    }

    /// <summary>The first zero itself, by halving the step before the one at which the walk ended.</summary>
    internal static double? FirstZero(in Cubic curve)
    {
        if (NoLongerAboveZero(curve) is not ({ } high and > 0))
            return NoLongerAboveZero(curve);

        var low = high - Step;
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            if (curve.At(middle) > 0)
                low = middle;
            else
                high = middle;
        }

        return high;
    }

    /// <summary>K_T, K_Q [1], b = dlnK_T/dlnJ and a = dlnK_Q/dlnJ [1].</summary>
    internal readonly record struct Loads(double Thrust, double Torque, double B, double A);
}
