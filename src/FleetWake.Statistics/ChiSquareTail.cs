using MathNet.Numerics;

namespace FleetWake.Statistics;

/// <summary>The upper tail of the chi-square distribution.</summary>
internal static class ChiSquareTail
{
    /// <summary>P(X > x) for nu degrees of freedom, without the loss of digits of one minus its complement.</summary>
    internal static double Above(double x, int nu) =>
        x <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(nu / 2.0, x / 2);
}
