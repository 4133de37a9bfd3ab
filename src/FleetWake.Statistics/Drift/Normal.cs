namespace FleetWake.Statistics.Drift;

/// <summary>The standard normal distribution.</summary>
internal static class Normal
{
    /// <summary>Phi(z) within 7.5e-8 absolutely.</summary>
    /// <remarks>Abramowitz and Stegun 1964, 26.2.17; an exact one costs five times as much and nobody sees the eighth digit of a chance.</remarks>
    public static double Cdf(double z)
    {
        if (z < -8) return 0;
        if (z > 8) return 1;
        var t = 1 / (1 + (0.2316419 * Math.Abs(z)));
        var tail = Math.Exp(-0.5 * z * z) * 0.3989422804014327 * t
            * (0.319381530 + (t * (-0.356563782 + (t * (1.781477937 + (t * (-1.821255978 + (t * 1.330274429))))))));
        return z > 0 ? 1 - tail : tail;
    }
}
