namespace FleetWake.Propulsion.OpenWater;

/// <summary>
/// The Wageningen B-screw polynomials: M.W.C. Oosterveld and P. van Oossanen, Further computer-analyzed data of the Wageningen
/// B-screw series, International Shipbuilding Progress 22 (251), 1975, tables 5 and 6; reprinted in Bernitsas, Ray and Kinley,
/// University of Michigan report 237, 1981, table 1. Order of a term: coefficient, powers of J, P/D, A_E/A_0 and Z.
/// </summary>
/// <remarks>Misprints of these tables circulate; the tests know them and show that each would be noticed.</remarks>
internal static class WageningenBTerms
{
    /// <summary>K_T at a Reynolds number of 2e6, 39 terms.</summary>
    internal static readonly SeriesTerm[] Thrust =
    [
        new(0.00880496, 0, 0, 0, 0), new(-0.204554, 1, 0, 0, 0), new(0.166351, 0, 1, 0, 0), new(0.158114, 0, 2, 0, 0),
        new(-0.147581, 2, 0, 1, 0), new(-0.481497, 1, 1, 1, 0), new(0.415437, 0, 2, 1, 0), new(0.0144043, 0, 0, 0, 1),
        new(-0.0530054, 2, 0, 0, 1), new(0.0143481, 0, 1, 0, 1), new(0.0606826, 1, 1, 0, 1),
        new(-0.0125894, 0, 0, 1, 1), new(0.0109689, 1, 0, 1, 1), new(-0.133698, 0, 3, 0, 0),
        new(0.00638407, 0, 6, 0, 0), new(-0.00132718, 2, 6, 0, 0), new(0.168496, 3, 0, 1, 0),
        new(-0.0507214, 0, 0, 2, 0), new(0.0854559, 2, 0, 2, 0), new(-0.0504475, 3, 0, 2, 0),
        new(0.010465, 1, 6, 2, 0), new(-0.00648272, 2, 6, 2, 0), new(-0.00841728, 0, 3, 0, 1),
        new(0.0168424, 1, 3, 0, 1), new(-0.00102296, 3, 3, 0, 1), new(-0.0317791, 0, 3, 1, 1),
        new(0.018604, 1, 0, 2, 1), new(-0.00410798, 0, 2, 2, 1), new(-0.000606848, 0, 0, 0, 2),
        new(-0.0049819, 1, 0, 0, 2), new(0.0025983, 2, 0, 0, 2), new(-0.000560528, 3, 0, 0, 2),
        new(-0.00163652, 1, 2, 0, 2), new(-0.000328787, 1, 6, 0, 2), new(0.000116502, 2, 6, 0, 2),
        new(0.000690904, 0, 0, 1, 2), new(0.00421749, 0, 3, 1, 2), new(5.65229e-05, 3, 6, 1, 2),
        new(-0.00146564, 0, 3, 2, 2),
    ];

    /// <summary>K_Q at a Reynolds number of 2e6, 47 terms.</summary>
    internal static readonly SeriesTerm[] Torque =
    [
        new(0.00379368, 0, 0, 0, 0), new(0.00886523, 2, 0, 0, 0), new(-0.032241, 1, 1, 0, 0),
        new(0.00344778, 0, 2, 0, 0), new(-0.0408811, 0, 1, 1, 0), new(-0.108009, 1, 1, 1, 0),
        new(-0.0885381, 2, 1, 1, 0), new(0.188561, 0, 2, 1, 0), new(-0.00370871, 1, 0, 0, 1),
        new(0.00513696, 0, 1, 0, 1), new(0.0209449, 1, 1, 0, 1), new(0.00474319, 2, 1, 0, 1),
        new(-0.00723408, 2, 0, 1, 1), new(0.00438388, 1, 1, 1, 1), new(-0.0269403, 0, 2, 1, 1),
        new(0.0558082, 3, 0, 1, 0), new(0.0161886, 0, 3, 1, 0), new(0.00318086, 1, 3, 1, 0),
        new(0.015896, 0, 0, 2, 0), new(0.0471729, 1, 0, 2, 0), new(0.0196283, 3, 0, 2, 0),
        new(-0.0502782, 0, 1, 2, 0), new(-0.030055, 3, 1, 2, 0), new(0.0417122, 2, 2, 2, 0),
        new(-0.0397722, 0, 3, 2, 0), new(-0.00350024, 0, 6, 2, 0), new(-0.0106854, 3, 0, 0, 1),
        new(0.00110903, 3, 3, 0, 1), new(-0.000313912, 0, 6, 0, 1), new(0.0035985, 3, 0, 1, 1),
        new(-0.00142121, 0, 6, 1, 1), new(-0.00383637, 1, 0, 2, 1), new(0.0126803, 0, 2, 2, 1),
        new(-0.00318278, 2, 3, 2, 1), new(0.00334268, 0, 6, 2, 1), new(-0.00183491, 1, 1, 0, 2),
        new(0.000112451, 3, 2, 0, 2), new(-2.97228e-05, 3, 6, 0, 2), new(0.000269551, 1, 0, 1, 2),
        new(0.00083265, 2, 0, 1, 2), new(0.00155334, 0, 2, 1, 2), new(0.000302683, 0, 6, 1, 2),
        new(-0.0001843, 0, 0, 2, 2), new(-0.000425399, 0, 3, 2, 2), new(8.69243e-05, 3, 3, 2, 2),
        new(-0.0004659, 0, 6, 2, 2), new(5.54194e-05, 1, 6, 2, 2),
    ];

    /// <summary>The change of K_T above a Reynolds number of 2e6; the last number is the power of L = log10 R_n - 0.301.</summary>
    internal static readonly SeriesTerm[] ThrustByReynolds =
    [
        new(0.000353485, 0, 0, 0, 0, 0), new(-0.00333758, 2, 0, 1, 0, 0), new(-0.00478125, 1, 1, 1, 0, 0),
        new(0.000257792, 2, 0, 1, 0, 2), new(6.43192e-05, 2, 6, 0, 0, 1), new(-1.10636e-05, 2, 6, 0, 0, 2),
        new(-2.76305e-05, 2, 0, 1, 1, 2), new(9.54e-05, 1, 1, 1, 1, 1), new(3.2049e-06, 1, 3, 1, 2, 1),
    ];

    /// <summary>The change of K_Q, likewise.</summary>
    internal static readonly SeriesTerm[] TorqueByReynolds =
    [
        new(-0.000591412, 0, 0, 0, 0, 0), new(0.00696898, 0, 1, 0, 0, 0), new(-6.66654e-05, 0, 6, 0, 1, 0),
        new(0.0160818, 0, 0, 2, 0, 0), new(-0.000938091, 0, 1, 0, 0, 1), new(-0.00059593, 0, 2, 0, 0, 1),
        new(7.82099e-05, 0, 2, 0, 0, 2), new(5.2199e-06, 2, 0, 1, 1, 1), new(-8.8528e-07, 1, 1, 1, 1, 2),
        new(2.30171e-05, 0, 6, 0, 1, 1), new(-1.84341e-06, 0, 6, 0, 1, 2), new(-0.00400252, 0, 0, 2, 0, 1),
        new(0.000220915, 0, 0, 2, 0, 2),
    ];
}
