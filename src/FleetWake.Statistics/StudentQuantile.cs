using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics;

/// <summary>How many standard errors a two-sided interval reaches out on each side.</summary>
internal static class StudentQuantile
{
    /// <summary>
    /// The highest level served. Beyond it the answer is ruled by the far tail of the noise, of which a dozen trials
    /// tell nothing, and the root finder below would run out of its bracket.
    /// </summary>
    internal const double HighestLevel = 0.9999;

    /// <summary>The t with P(|T| &lt; t) = level for nu degrees of freedom.</summary>
    internal static double TwoSided(double level, int nu) => nu switch
    {
        // Closed forms: P = (2/pi) arctan t for nu = 1 and P = t / sqrt(t^2 + 2) for nu = 2
        // (Abramowitz and Stegun 1964, 26.7.3 and 26.7.4; equation numbers from memory). The root finder is at its
        // worst in these heavy tails.
        1 => Math.Tan(Math.PI / 2 * level),
        2 => level * Math.Sqrt(2 / ((1 - level) * (1 + level))),
        _ => Polished(level, nu),
    };

    private static double Polished(double level, int nu)
    {
        var p = (1 + level) / 2;
        var t = StudentT.InvCDF(0, 1, nu, p);
        // MathNet finds this root only to its own tolerance; one Newton step takes it to the last few digits.
        return t - ((StudentT.CDF(0, 1, nu, t) - p) / StudentT.PDF(0, 1, nu, t));
    }
}
