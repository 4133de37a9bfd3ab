namespace FleetWake.Propulsion.Hull;

/// <summary>The lift of a planing surface, Savitsky 1964, eq. 15 and 16, and the same turned round.</summary>
internal static class PlaningLift
{
    /// <summary>Eq. 16: C_Lb = C_L0 - 0.0065 beta C_L0^0.60, beta [deg].</summary>
    internal static double OfDeadrise(double C_L0, double beta) => C_L0 - (0.0065 * beta * Math.Pow(C_L0, 0.60));

    /// <summary>Eq. 16 turned round, by halving above its lowest point, where the deadrise would take all lift away.</summary>
    internal static double OfFlatPlate(double C_Lb, double beta)
    {
        var low = Math.Pow(0.6 * 0.0065 * beta, 2.5); // where dC_Lb/dC_L0 = 0
        var high = low + C_Lb + 1;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (OfDeadrise(middle, beta) > C_Lb)
                high = middle;
            else
                low = middle;
        }

        return high;
    }

    /// <summary>Eq. 15 turned round for lambda: C_L0 = tau^1.1 (0.0120 lambda^0.5 + 0.0055 lambda^2.5/C_v^2), tau [deg].</summary>
    internal static double WettedRatio(double C_L0, double tau, double C_v)
    {
        var wanted = C_L0 / Math.Pow(tau, 1.1);
        // Either term alone would need at most this; both together need less.
        var high = Math.Min(Math.Pow(wanted / 0.0120, 2), Math.Pow(wanted * C_v * C_v / 0.0055, 0.4));
        var low = 0.0;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if ((0.0120 * Math.Sqrt(middle)) + (0.0055 * Math.Pow(middle, 2.5) / (C_v * C_v)) > wanted)
                high = middle;
            else
                low = middle;
        }

        return high;
    }
}
