namespace FleetWake.Propulsion.OpenWater;

/// <summary>
/// Polynomials of R.W.L. Gawn's three-bladed series of 1953 (segmental sections, flat face), regressed by D.L. Blount and
/// E.N. Hubble, Sizing segmental section commercially available propellers for small craft, SNAME Propellers '81, 1981, on the
/// terms of the B series. Order of a term: coefficient, powers of J, P/D, A_E/A_0 and Z.
/// </summary>
/// <remarks>
/// One public transcription only. Two digits there look like slips of a B-series value (2,0,0,2 of K_T and 3,0,1,1 of K_Q); they
/// stand as found, for either reading moves a coefficient by less than 2e-5. The powers of Z come from the B series.
/// </remarks>
internal static class GawnTerms
{
    /// <summary>K_T, 39 terms.</summary>
    internal static readonly SeriesTerm[] Thrust =
    [
        new(-0.05586363, 0, 0, 0, 0), new(-0.21730109, 1, 0, 0, 0), new(0.2605314, 0, 1, 0, 0),
        new(0.158114, 0, 2, 0, 0), new(-0.147581, 2, 0, 1, 0), new(-0.481497, 1, 1, 1, 0),
        new(0.37812278, 0, 2, 1, 0), new(0.0144043, 0, 0, 0, 1), new(-0.0530054, 2, 0, 0, 1),
        new(0.0143481, 0, 1, 0, 1), new(0.0606826, 1, 1, 0, 1), new(-0.0125894, 0, 0, 1, 1),
        new(0.0109689, 1, 0, 1, 1), new(-0.133698, 0, 3, 0, 0), new(0.00241157, 0, 6, 0, 0),
        new(-0.00053002, 2, 6, 0, 0), new(0.168496, 3, 0, 1, 0), new(0.02634542, 0, 0, 2, 0),
        new(0.04360136, 2, 0, 2, 0), new(-0.03118493, 3, 0, 2, 0), new(0.01249215, 1, 6, 2, 0),
        new(-0.00648272, 2, 6, 2, 0), new(-0.00841728, 0, 3, 0, 1), new(0.0168424, 1, 3, 0, 1),
        new(-0.00102296, 3, 3, 0, 1), new(-0.0317791, 0, 3, 1, 1), new(0.018604, 1, 0, 2, 1),
        new(-0.00410798, 0, 2, 2, 1), new(-0.000606848, 0, 0, 0, 2), new(-0.0049819, 1, 0, 0, 2),
        new(0.0025963, 2, 0, 0, 2), new(-0.000560528, 3, 0, 0, 2), new(-0.00163652, 1, 2, 0, 2),
        new(-0.000328787, 1, 6, 0, 2), new(0.000116502, 2, 6, 0, 2), new(0.000690904, 0, 0, 1, 2),
        new(0.00421749, 0, 3, 1, 2), new(5.65229e-05, 3, 6, 1, 2), new(-0.00146564, 0, 3, 2, 2),
    ];

    /// <summary>K_Q, 47 terms.</summary>
    internal static readonly SeriesTerm[] Torque =
    [
        new(0.00515898, 0, 0, 0, 0), new(0.01606668, 2, 0, 0, 0), new(-0.0441153, 1, 1, 0, 0),
        new(0.00682223, 0, 2, 0, 0), new(-0.0408811, 0, 1, 1, 0), new(-0.07732967, 1, 1, 1, 0),
        new(-0.0885381, 2, 1, 1, 0), new(0.16937502, 0, 2, 1, 0), new(-0.00370871, 1, 0, 0, 1),
        new(0.00513696, 0, 1, 0, 1), new(0.0209449, 1, 1, 0, 1), new(0.00474319, 2, 1, 0, 1),
        new(-0.00723408, 2, 0, 1, 1), new(0.00438388, 1, 1, 1, 1), new(-0.0269403, 0, 2, 1, 1),
        new(0.0558082, 3, 0, 1, 0), new(0.0161886, 0, 3, 1, 0), new(0.00318086, 1, 3, 1, 0),
        new(0.01290435, 0, 0, 2, 0), new(0.02445084, 1, 0, 2, 0), new(0.00700643, 3, 0, 2, 0),
        new(-0.02719046, 0, 1, 2, 0), new(-0.01664586, 3, 1, 2, 0), new(0.0300449, 2, 2, 2, 0),
        new(-0.03369749, 0, 3, 2, 0), new(-0.00350024, 0, 6, 2, 0), new(-0.0106854, 3, 0, 0, 1),
        new(0.00110903, 3, 3, 0, 1), new(-0.000313912, 0, 6, 0, 1), new(0.0035895, 3, 0, 1, 1),
        new(-0.00142121, 0, 6, 1, 1), new(-0.00383637, 1, 0, 2, 1), new(0.0126803, 0, 2, 2, 1),
        new(-0.00318278, 2, 3, 2, 1), new(0.00334268, 0, 6, 2, 1), new(-0.00183491, 1, 1, 0, 2),
        new(0.000112451, 3, 2, 0, 2), new(-2.97228e-05, 3, 6, 0, 2), new(0.000269551, 1, 0, 1, 2),
        new(0.00083265, 2, 0, 1, 2), new(0.00155334, 0, 2, 1, 2), new(0.000302683, 0, 6, 1, 2),
        new(-0.0001843, 0, 0, 2, 2), new(-0.000425399, 0, 3, 2, 2), new(8.69243e-05, 3, 3, 2, 2),
        new(-0.0004659, 0, 6, 2, 2), new(5.54194e-05, 1, 6, 2, 2),
    ];
}
