namespace FleetWake.Propulsion;

/// <summary>
/// The normal distribution of mean zero and standard deviation one: Abramowitz and Stegun, Handbook of Mathematical
/// Functions (1964), 26.2.11 (a series about zero) and 26.2.14 (a continued fraction for the tails), equation numbers from
/// memory. Good to some 1e-14 of the smaller tail.
/// </summary>
internal static class NormalCurve
{
    private const double RootTwoPi = 2.5066282746310002;
    private const double SeriesEnds = 3; // below it the series is short and loses no digits that matter

    /// <summary>P(x): the share below x; 0 and 1 at the infinities.</summary>
    internal static double Below(double x) => x < 0 ? Tail(-x) : 1 - Tail(x);

    /// <summary>ln P(x), finite for every finite x: the far tail has no share left but still a logarithm.</summary>
    internal static double LogBelow(double x) => x < -SeriesEnds
        ? (-x * x / 2) - Math.Log(RootTwoPi) + Math.Log(MillsRatio(-x))
        : Math.Log(Below(x));

    /// <summary>Z(x): the density.</summary>
    internal static double Density(double x) => Math.Exp(-x * x / 2) / RootTwoPi;

    /// <summary>Q(x) for x of zero or more.</summary>
    private static double Tail(double x)
    {
        if (x > SeriesEnds)
            return Density(x) * MillsRatio(x);
        var (sum, term) = (x, x);
        for (var k = 3; term > sum * 1e-17; k += 2)
            sum += term *= x * x / k;
        return 0.5 - (Density(x) * sum);
    }

    /// <summary>Q(x)/Z(x) for x above <see cref="SeriesEnds"/>, by its continued fraction x + 1/(x + 2/(x + 3/...)).</summary>
    private static double MillsRatio(double x)
    {
        var fraction = x;
        for (var k = 100; k >= 1; k--)
            fraction = x + (k / fraction);
        return 1 / fraction;
    }
}
