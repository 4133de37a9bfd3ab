namespace FleetWake.Propulsion.OpenWater;

/// <summary>One term of a regression polynomial: C J^s (P/D)^t A^u Z^v, times L^w where Reynolds numbers are corrected for.</summary>
/// <param name="C">Coefficient [1].</param>
/// <param name="S">Power of J, 0 to 3 in every series here; that is why a prop of given shape is a cubic in J.</param>
/// <param name="T">Power of P/D, 0 to 6.</param>
/// <param name="U">Power of the area ratio, 0 to 2.</param>
/// <param name="V">Power of the number of blades, 0 to 2.</param>
/// <param name="W">Power of L = log10 R_n - 0.301, 0 to 2.</param>
internal readonly record struct SeriesTerm(double C, byte S, byte T, byte U, byte V, byte W = 0);
