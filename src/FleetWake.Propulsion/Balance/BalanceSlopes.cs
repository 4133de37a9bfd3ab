using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>
/// Logarithmic slopes of prop, hull and engine about one operating point; what the linear balance is made of. All are pure
/// numbers [1].
/// </summary>
/// <param name="A">a = dlnK_Q/dlnJ, below zero.</param>
/// <param name="B">b = dlnK_T/dlnJ, below zero.</param>
/// <param name="M">m = dlnR/dlnV of the hull's resistance.</param>
/// <param name="E">e = dlnQ_e/dlnN of the engine's torque at wide-open throttle.</param>
/// <param name="TorqueByPitch">q_P = dlnK_Q/dln(P/D).</param>
/// <param name="ThrustByPitch">t_P = dlnK_T/dln(P/D).</param>
public readonly record struct BalanceSlopes(double A, double B, double M, double E, double TorqueByPitch, double ThrustByPitch)
{
    /// <summary>kappa = (2 - b)/(m - b): slope dlnV/dlnN of the hull-and-prop line.</summary>
    public double Kappa => (2 - B) / (M - B);

    /// <summary>h = 2 + a (kappa - 1): exponent of the prop's torque along that line.</summary>
    public double H => 2 + (A * (Kappa - 1));

    /// <summary>g = 1/(h - e): dlnN per dln of engine torque at a given rate.</summary>
    public double Gain => 1 / (H - E);

    /// <summary>dlnK_Q per unit of added section drag coefficient [1], above zero; zero when not known.</summary>
    public double TorqueByDrag { get; init; }

    /// <summary>dlnK_T per unit of added section drag coefficient [1], below zero; zero when not known.</summary>
    public double ThrustByDrag { get; init; }

    /// <summary>dlnN/dlnP = -g (q_P + a t_P/(m - b)): what the pitch of a prop does to the rate, about -0.73 for planing outboards.</summary>
    public double RateByPitch => -Gain * (TorqueByPitch + (A * ThrustByPitch / (M - B)));

    /// <summary>The slopes of a prop of a series at one point of working.</summary>
    /// <param name="point">The prop there; it must have thrust.</param>
    /// <param name="shape">Its blades.</param>
    /// <param name="resistanceExponent">m = dlnR/dlnV [1].</param>
    /// <param name="torqueSlope">e = dlnQ_e/dlnN [1].</param>
    /// <exception cref="ArgumentOutOfRangeException">No thrust or no torque there: logarithms have no slope.</exception>
    public static BalanceSlopes Of(OpenWaterPoint point, BladeShape shape, double resistanceExponent, double torqueSlope)
    {
        var (K_T, K_Q) = (point.ThrustCoefficient, point.TorqueCoefficient); // [1]
        if (!(K_T > 0 && K_Q > 0))
            throw new ArgumentOutOfRangeException(nameof(point), point, "The prop must have thrust and torque.");

        var J = point.AdvanceRatio;                            // [1]
        var (dK_T, dK_Q) = SectionDrag.Change(shape, 1);       // [1] per unit of C_D
        return new(
            J * point.TorqueByAdvance / K_Q, J * point.ThrustByAdvance / K_T, resistanceExponent, torqueSlope,
            point.PitchRatio * point.TorqueByPitch / K_Q, point.PitchRatio * point.ThrustByPitch / K_T)
        {
            TorqueByDrag = dK_Q / K_Q,
            ThrustByDrag = dK_T / K_T,
        };
    }
}
