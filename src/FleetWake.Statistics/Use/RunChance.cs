using MathNet.Numerics;

namespace FleetWake.Statistics.Use;

/// <summary>
/// The chance that a boat has run some hours by so many season days, made ready to be asked often: the regularized incomplete
/// beta function I_x(a, b), with its slope, at many x for one a and b.
/// </summary>
internal readonly struct RunChance
{
    private const double Far = 1e-10; // where a tail is not worth its continued fraction
    private const double Digits = 1e-12;
    private const int MostTerms = 1000; // some twice the root of the greater of a and b are wanted

    private readonly double _a;
    private readonly double _b;
    private readonly double _logBeta;

    internal RunChance(double a, double b)
    {
        (_a, _b) = (a, b);
        _logBeta = SpecialFunctions.GammaLn(a) + SpecialFunctions.GammaLn(b) - SpecialFunctions.GammaLn(a + b);
    }

    /// <summary>I_x(a, b) and what it gains as the odds x / (1 - x) grow by a share.</summary>
    /// <param name="logX">Logarithm of x.</param>
    /// <param name="logRest">Logarithm of 1 - x.</param>
    internal (double Chance, double Slope) At(double logX, double logRest)
    {
        var slope = Math.Exp((_a * logX) + (_b * logRest) - _logBeta);
        var x = Math.Exp(logX);
        var isLow = x * (_a + _b + 2) < _a + 1;
        if (slope < Far)
            return (isLow ? 0 : 1, slope);
        return isLow
            ? (slope / _a / Fraction(_a, _b, x), slope)
            : (1 - (slope / _b / Fraction(_b, _a, Math.Exp(logRest))), slope);
    }

    // 1 + d1/(1 + d2/(1 + ...)), NIST Digital Library of Mathematical Functions 8.17.22 (from memory, held against MathNet by
    // a test), summed by Lentz's way as modified by Thompson and Barnett (1986; from memory).
    private static double Fraction(double a, double b, double x)
    {
        double value = 1, c = 1, d = 0;
        for (var m = 0; m < MostTerms; m++)
        {
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            (c, d) = (1 + (odd / c), 1 / (1 + (odd * d)));
            value *= c * d;
            var even = (m + 1) * (b - m - 1) * x / ((a + (2 * m) + 1) * (a + (2 * m) + 2));
            (c, d) = (1 + (even / c), 1 / (1 + (even * d)));
            value *= c * d;
            if (Math.Abs((c * d) - 1) < Digits)
                break;
        }

        return value;
    }
}
