namespace FleetWake.Propulsion.Hull;

/// <summary>Friction of a smooth, turbulent plate.</summary>
internal static class Friction
{
    /// <summary>
    /// C_f [1] of 0.242/sqrt(C_f) = log10(R_n C_f) (K.E. Schoenherr 1932), by Newton's method in s = 1/sqrt(C_f), in which the equation
    /// 0.242 s + 2 log10 s = log10 R_n is so nearly straight that a handful of steps suffices.
    /// </summary>
    /// <param name="R_n">Reynolds number [1], above zero; below some 1e5 no turbulent friction is meant.</param>
    internal static double Schoenherr(double R_n)
    {
        var right = Math.Log10(Math.Max(R_n, 1e4));
        var s = 20.0;
        for (var i = 0; i < 20; i++)
            s -= ((0.242 * s) + (2 * Math.Log10(s)) - right) / (0.242 + (2 / (s * Math.Log(10))));
        return 1 / (s * s);
    }
}
