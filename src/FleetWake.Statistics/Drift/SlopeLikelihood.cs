namespace FleetWake.Statistics.Drift;

/// <summary>Sums Gaussian curves over the grid of drifts.</summary>
internal static class SlopeLikelihood
{
    /// <summary>Components this far below the best one, in natural logarithms, cannot be seen in sixteen digits' sums.</summary>
    private const double Negligible = 40;

    /// <summary>The highest value a component takes on the grid.</summary>
    public static double Peak(in Component c, double logWeight)
    {
        var s = Nearest(c);
        return logWeight + (s * (c.Xu - (0.5 * c.Xx * s)));
    }

    /// <summary>Fills <paramref name="likelihood"/> with the sum of all components, each divided by exp(scale).</summary>
    /// <returns>scale, the logarithm that all were divided by.</returns>
    public static double Sum(ReadOnlySpan<Component> components, ReadOnlySpan<double> logWeights, Span<double> likelihood)
    {
        var scale = double.NegativeInfinity;
        for (var c = 0; c < components.Length; c++) scale = Math.Max(scale, Peak(components[c], logWeights[c]));
        likelihood.Clear();
        for (var c = 0; c < components.Length; c++) Add(components[c], logWeights[c] - scale, likelihood);
        return scale;
    }

    /// <summary>Adds exp(logWeight + s Xu - s^2 Xx / 2) for every drift s.</summary>
    /// <remarks>
    /// Outward from the peak neighbours differ by a factor that itself shrinks by exp(-Xx) a step: two multiplications a
    /// place where an exponential would cost twenty.
    /// </remarks>
    public static void Add(in Component c, double logWeight, Span<double> likelihood)
    {
        var start = Nearest(c);
        var top = logWeight + (start * (c.Xu - (0.5 * c.Xx * start)));
        if (!(top > -Negligible)) return;
        var value = Math.Exp(top);
        var shrink = Math.Exp(-c.Xx);
        var g0 = start - SlopeGrid.Lowest;
        likelihood[g0] += value;
        var (up, down) = (Math.Exp(c.Xu - (c.Xx * (start + 0.5))), Math.Exp(-c.Xu + (c.Xx * (start - 0.5))));
        var (f, g) = (value, g0);
        while (++g < SlopeGrid.Count)
        {
            f *= up;
            up *= shrink;
            likelihood[g] += f;
        }

        (f, g) = (value, g0);
        while (--g >= 0)
        {
            f *= down;
            down *= shrink;
            likelihood[g] += f;
        }
    }

    private static int Nearest(in Component c) =>
        c.Xx > 0 ? (int)Math.Round(Math.Clamp(c.Xu / c.Xx, SlopeGrid.Lowest, SlopeGrid.Highest)) : 0;
}
