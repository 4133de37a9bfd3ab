using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>
/// What drag of the blade sections does to thrust and torque, after the propeller correction of the ITTC 1978 performance prediction
/// method (ITTC 7.5-02-03-01.4; form from memory), taken at 0.75 of the radius.
/// </summary>
public static class SectionDrag
{
    /// <summary>
    /// dK_T = -0.3 dC_D (P/D)(c Z/D) and dK_Q = 0.25 dC_D (c Z/D), both [1]. Linear, with no limit of its own.
    /// </summary>
    /// <param name="shape">The blades.</param>
    /// <param name="dragCoefficient">dC_D [1] added to the sections' drag.</param>
    public static (double ThrustCoefficient, double TorqueCoefficient) Change(BladeShape shape, double dragCoefficient)
    {
        var dC_D = Reject.NotFinite(dragCoefficient, dragCoefficient); // [1]
        var cZ_D = shape.ChordRatio * shape.Blades;                    // c Z/D [1]
        return (-0.3 * dC_D * shape.PitchRatio * cZ_D, 0.25 * dC_D * cZ_D);
    }
}
