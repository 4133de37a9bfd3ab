namespace FleetWake.Propulsion.OpenWater;

/// <summary>
/// What a prop does at one advance ratio in open water; definitions as in Bernitsas, Ray and Kinley 1981. All are pure numbers [1].
/// </summary>
/// <param name="AdvanceRatio">J = V_A/(n D).</param>
/// <param name="PitchRatio">P/D.</param>
/// <param name="ThrustCoefficient">K_T = T/(rho n^2 D^4).</param>
/// <param name="TorqueCoefficient">K_Q = Q/(rho n^2 D^5).</param>
/// <param name="ThrustByAdvance">dK_T/dJ.</param>
/// <param name="TorqueByAdvance">dK_Q/dJ.</param>
/// <param name="ThrustByPitch">dK_T/d(P/D).</param>
/// <param name="TorqueByPitch">dK_Q/d(P/D).</param>
/// <param name="Extrapolated">Shape or J lies outside what the series was measured for, or past the end of thrust: an indication
/// at best.</param>
public readonly record struct OpenWaterPoint(
    double AdvanceRatio, double PitchRatio,
    double ThrustCoefficient, double TorqueCoefficient,
    double ThrustByAdvance, double TorqueByAdvance,
    double ThrustByPitch, double TorqueByPitch,
    bool Extrapolated)
{
    /// <summary>
    /// Open-water efficiency eta_0 = J K_T/(2 pi K_Q). Zero where there is no thrust, and past the end of torque, where the
    /// quotient says nothing.
    /// </summary>
    public double Efficiency => ThrustCoefficient > 0 && TorqueCoefficient > 0
        ? AdvanceRatio * ThrustCoefficient / (2 * Math.PI * TorqueCoefficient)
        : 0;

    /// <summary>True slip s_r = 1 - J/(P/D).</summary>
    public double TrueSlip => 1 - (AdvanceRatio / PitchRatio);
}
