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
}
