namespace FleetWake.Propulsion.Balance;

/// <summary>
/// The balance to first order about one point of working: what a small change of prop, engine or hull does to rate and speed. Exact in
/// the limit of small changes; <see cref="WotBalance"/> is the whole, and the tests hold one against the other. Follows from
/// the two equations of <see cref="WotBalance"/> alone, expanded in logarithms.
/// </summary>
/// <remarks>
/// dlnN = g (dPow - dq - a c), dlnV = kappa dlnN + c, c = (dt - dR)/(m - b), with dq and dt the changes of ln Q and ln T at fixed n
/// and V. The contrast c does not hold the engine or the air, and the gain g alone holds the engine's slope, so that g can be learned
/// from one known change.
/// </remarks>
public static class LinearBalance
{
    /// <summary>The shift of rate and speed from the baseline.</summary>
    /// <param name="slopes">Slopes at the baseline.</param>
    /// <param name="state">How the boat differs; changes enter by their logarithms, so that factors still multiply.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="state"/> outside its range, named.</exception>
    public static BalanceShift Shift(in BalanceSlopes slopes, in BoatState state)
    {
        state.Check();
        var (a, b) = (slopes.A, slopes.B);
        var (q_P, t_P) = (slopes.TorqueByPitch, slopes.ThrustByPitch);
        var p = Math.Log(1 + state.PitchChange);                           // dln P [1]
        var d = Math.Log(1 + state.DiameterChange);                        // dln D, pitch and area ratio held [1]
        var r = Math.Log(1 + state.WaterDensityChange);                    // dln rho [1]
        var s = -Math.Log(1 - state.HubSlip);                              // ln of turns in over turns out [1]
        var dPow = Math.Log(1 + state.EngineTorqueChange);                 // dln Q_e at a given rate [1]
        var dR = Math.Log(1 + state.ResistanceChange);                     // dln R at a given speed [1]
        var dC_D = state.SectionDragChange;                                // [1]
        var dq = (q_P * p) + ((5 - a - q_P) * d) + r + (slopes.TorqueByDrag * dC_D) + Math.Log(1 - state.TorqueLoss);
        var dt = (t_P * p) + ((4 - b - t_P) * d) + r + (slopes.ThrustByDrag * dC_D) + Math.Log(1 - state.ThrustLoss);

        var c = (dt - dR) / (slopes.M - b);
        var (g, kappa) = (slopes.Gain, slopes.Kappa);
        var lnTurns = (g * (dPow - dq - (a * c))) + (g * slopes.E * s);    // of the prop; a slipping hub frees the engine to turn
        return new BalanceShift(lnTurns + s, (kappa * lnTurns) + c, c - (kappa * s));
    }
}
