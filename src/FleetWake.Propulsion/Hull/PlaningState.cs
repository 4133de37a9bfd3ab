namespace FleetWake.Propulsion.Hull;

/// <summary>A planing hull at one trim and speed.</summary>
/// <param name="TrimDegrees">tau [deg], keel to water.</param>
/// <param name="WettedRatio">lambda [1]: mean wetted length over beam.</param>
/// <param name="SpeedCoefficient">C_v = V/sqrt(g b) [1].</param>
/// <param name="BottomSpeed">V_m: mean speed of the water along the bottom.</param>
/// <param name="FrictionDrag">D_f: drag of friction along the bottom.</param>
/// <param name="Drag">D: the whole drag of the bare bottom, pressure and friction; no air, spray or appendages.</param>
/// <param name="PressureForward">l_p: centre of pressure forward of the transom.</param>
/// <param name="MomentNewtonMetres">What is left of the moments about the centre of gravity [N.m], Savitsky's eq. 35; zero at
/// equilibrium, positive when the bow would sink, as it does above the trim of equilibrium.</param>
/// <param name="InRange">0.60 &lt;= C_v &lt;= 13, 2 &lt;= tau &lt;= 15 deg and lambda &lt;= 4, the limits of eq. 15; beyond them an
/// extrapolation.</param>
public readonly record struct PlaningState(
    double TrimDegrees, double WettedRatio, double SpeedCoefficient, Speed BottomSpeed, Force FrictionDrag, Force Drag,
    Length PressureForward, double MomentNewtonMetres, bool InRange)
{
    /// <summary>Effective power D V at a speed.</summary>
    /// <param name="speed">Speed of the boat.</param>
    public Power EffectivePower(Speed speed) => Power.FromWatts(Drag.Newtons * Math.Abs(speed.MetresPerSecond));
}
