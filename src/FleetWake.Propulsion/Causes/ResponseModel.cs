using FleetWake.Propulsion.Balance;

namespace FleetWake.Propulsion.Causes;

/// <summary>One of the ways in which a boat may answer; a cause is judged over all of them, each by its weight.</summary>
/// <param name="Slopes">Slopes of prop, hull and engine at the baseline.</param>
/// <param name="DragThrust">
/// Thrust lost for torque gained when the blades' section drag rises, -dlnK_T over dlnK_Q [1], zero or more. From the ITTC-78
/// propeller correction (ITTC 7.5-02-03-01.4, from memory) dK_T = -0.3 dC_D (P/D) cZ/D and dK_Q = 0.25 dC_D cZ/D:
/// 1.2 (P/D) K_Q/K_T; 0.2 to 0.35 on planing outboards (computed).
/// </param>
/// <param name="Weight">Its weight against the other models, above zero.</param>
public readonly record struct ResponseModel(BalanceSlopes Slopes, double DragThrust, double Weight);

/// <summary>How sizes of causes turn into changes; first order, about the baseline.</summary>
/// <param name="LnRpm">dlnN of the engine at wide-open throttle per unit of size [1].</param>
/// <param name="LnSpeed">dlnV there [1].</param>
/// <param name="LnSpeedAtRpm">dlnV at one RPM of the engine, throttle drawn back and on plane [1]; free of the engine's power.</param>
public readonly record struct CauseResponse(double LnRpm, double LnSpeed, double LnSpeedAtRpm)
{
    /// <summary>Torque lost for thrust lost when a prop draws air; the range of published ratios is wide, judged, no source.</summary>
    private const double TorqueLossOfVentilation = 0.8;

    /// <summary>
    /// The response to a cause. With dq, dt the changes of lnQ, lnT at one n and V, dR that of resistance and dPow that of the
    /// engine's torque: c = (dt - dR)/(m - b), dlnN = g (dPow - dq - a c), dlnV = kappa dlnN + c. Computed, checked against a
    /// nonlinear balance; no published source.
    /// </summary>
    /// <param name="cause">A cause with a size. The sizes: pitch and diameter, -dln; hub slip, the share of turns lost;
    /// ventilation, -dlnK_T; load and hull, dln of resistance up or down; engine, -dln of torque; roughness, dlnK_Q.</param>
    /// <param name="model">The model.</param>
    /// <exception cref="ArgumentOutOfRangeException">The cause has no size.</exception>
    public static CauseResponse Of(Cause cause, ResponseModel model)
    {
        var (a, b, m, e, q_P, t_P) = model.Slopes;
        var (g, kappa, h) = (model.Slopes.Gain, model.Slopes.Kappa, model.Slopes.H);
        if (cause == Cause.HubSlip) // the blades' torque is that of the slower shaft; at low torque the hub holds
            return new CauseResponse(g * h, kappa * g * e, 0);

        var (dPow, dq, dt, dR) = cause switch
        {
            Cause.PitchOrCupLoss => (0.0, -q_P, -t_P, 0.0),
            Cause.DiameterLoss => (0, -(5 - a - q_P), -(4 - b - t_P), 0),
            Cause.Ventilation => (0, -TorqueLossOfVentilation, -1, 0),
            Cause.LighterLoad => (0, 0, 0, -1),
            Cause.EnginePower => (-1, 0, 0, 0),
            Cause.HullOrLoad => (0, 0, 0, 1),
            Cause.BladeRoughness => (0, 1, -model.DragThrust, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "Only a cause with a size has a response."),
        };
        var c = (dt - dR) / (m - b);
        var dlnN = g * (dPow - dq - (a * c));

        // At lower RPM on plane the blades are loaded less and draw no air as a rule (common practice, no source).
        return new CauseResponse(dlnN, (kappa * dlnN) + c, cause == Cause.Ventilation ? 0 : c);
    }
}
