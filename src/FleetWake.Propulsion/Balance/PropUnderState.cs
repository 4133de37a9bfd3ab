using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>K_T and K_Q of the prop as a state leaves it, with their logarithmic slopes by J.</summary>
internal readonly struct PropUnderState
{
    private readonly OpenWaterCurve _curve;
    private readonly double _dK_T, _dK_Q, _thrustLeft, _torqueLeft;

    internal PropUnderState(OpenWaterCurve curve, BladeShape shape, in BoatState state)
    {
        _curve = curve;
        (_dK_T, _dK_Q) = SectionDrag.Change(shape, state.SectionDragChange);
        _thrustLeft = 1 - state.ThrustLoss;
        _torqueLeft = 1 - state.TorqueLoss;
    }

    internal Loads At(double J)
    {
        var point = _curve.At(J);
        var K_T = point.ThrustCoefficient + _dK_T; // [1]
        var K_Q = point.TorqueCoefficient + _dK_Q; // [1]
        return new Loads(
            K_T * _thrustLeft, K_Q * _torqueLeft, J * point.ThrustByAdvance / K_T, J * point.TorqueByAdvance / K_Q,
            point.Extrapolated);
    }

    /// <summary>K_T, K_Q [1], b = dlnK_T/dlnJ and a = dlnK_Q/dlnJ [1].</summary>
    internal readonly record struct Loads(double Thrust, double Torque, double B, double A, bool Extrapolated);
}
