using MathNet.Numerics;

namespace FleetWake.Statistics;

/// <summary>Where a gamma distribution of rate one has a given part of itself below it.</summary>
internal static class GammaQuantile
{
    /// <summary>The x with P(X &lt; x) = p for shape a, to about twelve digits; shapes from 0.01 to 1e9.</summary>
    internal static double Lower(double a, double p) => Solve(a, x => SpecialFunctions.GammaLowerRegularized(a, x) - p);

    /// <summary>The x with P(X > x) = p: the same in the upper tail, without the loss of digits of 1 - p.</summary>
    internal static double Upper(double a, double p) => Solve(a, x => p - SpecialFunctions.GammaUpperRegularized(a, x));

    // Bisection on log x between bounds that surely hold it: Wilson and Hilferty's cube root is close but fails for small
    // shapes, so the bracket is widened until it holds. A Newton step would be faster; this cannot run away.
    private static double Solve(double a, Func<double, double> excess)
    {
        double low = a, high = a;
        while (excess(low) > 0 && low > 1e-300)
            low = Math.Max(1e-300, low - (2 * Math.Sqrt(a)) > 0 ? low - (2 * Math.Sqrt(a)) : low * 1e-3);
        while (excess(high) < 0)
            high += (2 * Math.Sqrt(a)) + 1;

        for (var i = 0; i < 200 && high - low > 1e-15 * high; i++)
        {
            var middle = high > 2 * low ? Math.Sqrt(low * high) : (low + high) / 2;
            if (middle <= low || middle >= high)
                break;
            if (excess(middle) > 0)
                high = middle;
            else
                low = middle;
        }

        return (low + high) / 2;
    }
}
