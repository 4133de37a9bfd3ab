namespace FleetWake.Propulsion.Hull;

/// <summary>
/// The method of D. Savitsky, Hydrodynamic design of planing hulls, Marine Technology 1 (1), 1964, 71-95, for prismatic hulls in calm,
/// deep water. Equations as in a public transcription, with its notes of the paper's slips.
/// </summary>
/// <remarks>
/// The paper's worked example mixes densities of 1.94 and 2.00 slug/ft3; here one density holds throughout, and drag comes out 2.7 %
/// below the print. The mean bottom speed is taken in its form for deadrise (from memory); the paper reads it off a chart.
/// Use here: an exponent m about a boat's own speed. Levels are calibrated, for a real hull is not a prism.
/// </remarks>
public static class Savitsky
{
    /// <summary>Kinematic viscosity of sea water at 15 C [m2/s], about 1.19e-6 (ITTC 7.5-02-01-03, from memory).</summary>
    public const double SeaWaterSquareMetresPerSecond = 1.19e-6;

    /// <summary>dC_f for a hull's roughness [1]: 0.0004, the standard allowance of the American Towing Tank Conference.</summary>
    private const double RoughnessAllowance = 0.0004;

    private const double StandardGravity = 9.80665; // g_n [m/s2] exactly (3rd CGPM, 1901)

    private const double LeastTrim = 0.2, MostTrim = 25; // [deg]

    /// <summary>The trim at which the moments balance (eq. 35), and the drag there.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="speed">Speed through water, above zero.</param>
    /// <param name="water">Density of the water, above zero.</param>
    /// <param name="kinematicViscositySquareMetresPerSecond">nu [m2/s], 1e-7 to 1e-5.</param>
    /// <returns>The state; null when no trim from 0.2 to 25 degrees balances the moments: then the hull does not plane at this
    /// speed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range, named.</exception>
    public static PlaningState? Equilibrium(
        PlaningHull hull, Speed speed, Density water,
        double kinematicViscositySquareMetresPerSecond = SeaWaterSquareMetresPerSecond)
    {
        var (low, high) = (LeastTrim, MostTrim);
        if (MomentAt(low) > 0 || MomentAt(high) < 0)
            return null;

        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (MomentAt(middle) > 0)
                high = middle;
            else
                low = middle;
        }

        return AtTrim(hull, speed, water, high, kinematicViscositySquareMetresPerSecond);

        double MomentAt(double tau) =>
            AtTrim(hull, speed, water, tau, kinematicViscositySquareMetresPerSecond).MomentNewtonMetres;
    }

    /// <summary>Lift, drag and moment at a given trim.</summary>
    /// <param name="hull">The hull.</param>
    /// <param name="speed">Speed through water, above zero.</param>
    /// <param name="water">Density of the water, above zero.</param>
    /// <param name="trimDegrees">tau [deg], 0.2 to 25; trusted from 2 to 15.</param>
    /// <param name="kinematicViscositySquareMetresPerSecond">nu [m2/s], 1e-7 to 1e-5.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input outside its range, named; or a speed so low that no planing surface
    /// would carry the boat.</exception>
    public static PlaningState AtTrim(
        PlaningHull hull, Speed speed, Density water, double trimDegrees,
        double kinematicViscositySquareMetresPerSecond = SeaWaterSquareMetresPerSecond)
    {
        ArgumentNullException.ThrowIfNull(hull);
        hull.Check();
        _ = Reject.NotWithin(speed.MetresPerSecond, 0.1, 200, nameof(speed));
        _ = Reject.NotWithin(water.KilogramsPerCubicMetre, 500, 2000, nameof(water));
        _ = Reject.NotWithin(trimDegrees, LeastTrim, MostTrim, nameof(trimDegrees));
        _ = Reject.NotWithin(kinematicViscositySquareMetresPerSecond, 1e-7, 1e-5, nameof(kinematicViscositySquareMetresPerSecond));
        var V = speed.MetresPerSecond;                          // [m/s]
        var b = hull.Beam.Metres;                               // [m]
        var rho = water.KilogramsPerCubicMetre;                 // [kg/m3]
        var nu = kinematicViscositySquareMetresPerSecond;       // [m2/s]
        var tau = trimDegrees;                                  // [deg]
        var beta = hull.DeadriseDegrees;                        // [deg]
        var W = hull.Mass.Kilograms * StandardGravity; // [N]
        var C_v = V / Math.Sqrt(StandardGravity * b);  // [1]
        var C_Lb = W / (0.5 * rho * V * V * b * b);               // [1]
        _ = Reject.NotWithin(C_Lb, 0, 2, nameof(speed)); // above, eq. 16 would ask for a lift that no planing surface has

        var C_L0 = PlaningLift.OfFlatPlate(C_Lb, beta);         // [1]
        var lambda = PlaningLift.WettedRatio(C_L0, tau, C_v);   // [1]
        var tauRad = double.DegreesToRadians(tau);              // [rad]
        var betaRad = double.DegreesToRadians(beta);            // [rad]
        var C_Ld = PlaningLift.OfDeadrise(0.0120 * Math.Sqrt(lambda) * Math.Pow(tau, 1.1), beta); // dynamic part alone [1]
        var V_m = V * Math.Sqrt(Math.Clamp(1 - (C_Ld / (lambda * Math.Cos(tauRad))), 0.05, 1));   // [m/s]
        var C_f = Friction.Schoenherr(V_m * lambda * b / nu);   // [1]
        var D_f = rho * V_m * V_m * lambda * b * b * (C_f + RoughnessAllowance) / (2 * Math.Cos(betaRad)); // [N]
        var D = (W * Math.Tan(tauRad)) + (D_f / Math.Cos(tauRad));                                         // [N]
        var C_p = 0.75 - (1 / ((5.21 * C_v * C_v / (lambda * lambda)) + 2.39));                            // [1]
        var l_p = C_p * lambda * b;                             // [m]

        var c = hull.GravityForward.Metres - l_p;                               // [m]
        var a = hull.GravityAbove.Metres - (b / 4 * Math.Tan(betaRad));         // [m]
        var f = hull.ThrustArm.Metres;                                          // [m]
        var thrust = tauRad + double.DegreesToRadians(hull.ThrustAngleDegrees); // tau + epsilon [rad]
        var moment = (W * ((c * (1 - (Math.Sin(tauRad) * Math.Sin(thrust))) / Math.Cos(tauRad)) - (f * Math.Sin(tauRad))))
            + (D_f * (a - f)); // [N.m], eq. 35

        var inRange = C_v is >= 0.60 and <= 13 && tau is >= 2 and <= 15 && lambda <= 4;
        return new PlaningState(
            tau, lambda, C_v, Speed.FromMetresPerSecond(V_m), Force.FromNewtons(D_f), Force.FromNewtons(D),
            Length.FromMetres(l_p), moment, inRange);
    }
}
