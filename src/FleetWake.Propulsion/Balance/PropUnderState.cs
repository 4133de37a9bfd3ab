using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>K_T and K_Q of the prop as a state leaves it, with their logarithmic slopes by J.</summary>
internal readonly struct PropUnderState
{
    /// <summary>
    /// Far outside its range a series may run out of torque before it runs out of thrust. Held at this floor, the engine races on and
    /// a solve still ends at a finite place, which is marked extrapolated.
    /// </summary>
    private const double LeastTorque = 1e-6;

    private readonly OpenWaterCurve _curve;
    private readonly double _thrustLeft, _torqueLeft;

    /// <param name="curve">The series' curve, with the drag of the sections already in it.</param>
    /// <param name="state">The state.</param>
    internal PropUnderState(OpenWaterCurve curve, in BoatState state) =>
        (_curve, _thrustLeft, _torqueLeft) = (curve, 1 - state.ThrustLoss, 1 - state.TorqueLoss);

    internal Loads At(double J)
    {
        var point = _curve.At(J);
        var (K_T, K_Q) = (point.ThrustCoefficient, point.TorqueCoefficient); // [1]
        var (b, a) = (J * point.ThrustByAdvance / K_T, J * point.TorqueByAdvance / K_Q); // [1]
        return K_Q > LeastTorque
            ? new Loads(K_T * _thrustLeft, K_Q * _torqueLeft, b, a, point.Extrapolated)
            : new Loads(K_T * _thrustLeft, LeastTorque * _torqueLeft, b, 0, true);
    }

    /// <summary>K_T, K_Q [1], b = dlnK_T/dlnJ and a = dlnK_Q/dlnJ [1].</summary>
    internal readonly record struct Loads(double Thrust, double Torque, double B, double A, bool Extrapolated);
}
