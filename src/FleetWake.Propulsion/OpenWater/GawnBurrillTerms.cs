namespace FleetWake.Propulsion.OpenWater;

/// <summary>
/// Open-water polynomials of the three-bladed KCA series of R.W.L. Gawn and L.C. Burrill, Effect of cavitation on the performance
/// of a series of 16 in. model propellers, Trans. INA 99, 1957, regressed by D. Radojcic, Mathematical model of segmental section
/// propeller series for open-water and cavitating conditions, SNAME Propellers '88, 1988. Order of a term: coefficient, powers of
/// J, P/D, A_D/A_0 (developed, not expanded, area) and a zero.
/// </summary>
/// <remarks>The increments for cavitation are left out: the sign convention of the copies at hand is not settled.</remarks>
internal static class GawnBurrillTerms
{
    /// <summary>K_T, 16 terms.</summary>
    internal static readonly SeriesTerm[] Thrust =
    [
        new(0.1193852, 0, 0, 0, 0), new(-0.6574682, 1, 0, 0, 0), new(0.3493294, 0, 1, 0, 0),
        new(0.4119366, 1, 1, 0, 0), new(-0.1991927, 1, 2, 0, 0), new(5.8630510e-2, 2, 2, 0, 0),
        new(-1.1077350e-2, 3, 2, 0, 0), new(-0.1341679, 0, 0, 1, 0), new(0.2628839, 1, 0, 1, 0),
        new(-0.5217023, 1, 1, 1, 0), new(0.2970728, 0, 2, 1, 0), new(6.1525800e-2, 3, 1, 2, 0),
        new(-2.4708400e-2, 3, 2, 2, 0), new(-4.0801660e-3, 0, 6, 1, 0), new(4.1542010e-3, 1, 6, 1, 0),
        new(-1.1364520e-3, 0, 6, 2, 0),
    ];

    /// <summary>K_Q, 17 terms.</summary>
    internal static readonly SeriesTerm[] Torque =
    [
        new(1.5411660e-3, 0, 0, 0, 0), new(0.1091688, 1, 0, 0, 0), new(-0.3102420, 2, 0, 0, 0),
        new(0.1547428, 3, 0, 0, 0), new(-4.3706150e-2, 0, 1, 0, 0), new(0.2490295, 2, 1, 0, 0),
        new(-0.1594602, 3, 1, 0, 0), new(8.5367470e-2, 0, 2, 0, 0), new(-9.5121630e-2, 1, 2, 0, 0),
        new(-9.3203070e-3, 2, 2, 0, 0), new(3.2878050e-2, 3, 2, 0, 0), new(5.4960340e-2, 1, 0, 1, 0),
        new(-4.8650630e-2, 0, 1, 1, 0), new(-0.1062500, 1, 1, 1, 0), new(8.5299550e-2, 0, 2, 1, 0),
        new(1.1010230e-2, 3, 0, 2, 0), new(-3.1517560e-3, 2, 2, 2, 0),
    ];
}
