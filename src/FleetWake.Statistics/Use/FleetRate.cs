using MathNet.Numerics;

namespace FleetWake.Statistics.Use;

/// <summary>
/// What a fleet tells of the rate of a boat of it that nobody has seen: rates are gamma distributed about the fleet's mean m
/// with shape a, both in doubt and integrated over on a grid.
/// </summary>
/// <remarks>
/// Before the data, log m is normal about <see cref="SeasonOfUse.Trade"/>'s with standard deviation 0.7 (fleets differ by a
/// factor of two) and log a about log 3 with 0.6 (boats of a fleet by some 60 %): judgement, no source. Without a boat that
/// gives about the trade's belief.
/// </remarks>
internal static class FleetRate
{
    private static readonly double s_logMean = Math.Log(SeasonOfUse.Trade.MeanHoursPerDay);

    /// <summary>The gamma distribution whose logarithm has the mean and the variance of the belief.</summary>
    /// <param name="boats">Lumps run, and season days over the lump, of each.</param>
    internal static (double Mean, double Shape) Of(IReadOnlyList<(double Lumps, double Exposure)> boats)
    {
        var nodes = (from i in Enumerable.Range(0, 31)
                     from j in Enumerable.Range(0, 61)
                     let a = Math.Exp(Math.Log(3) + (0.6 * ((i / 5.0) - 3)))
                     let m = Math.Exp(s_logMean + (0.7 * ((j / 7.5) - 4)))
                     select (A: a, M: m)).ToArray();
        var log = new double[nodes.Length];
        for (var k = 0; k < nodes.Length; k++)
            log[k] = LogPosterior(nodes[k].A, nodes[k].M, boats);
        var top = log.Max();
        double sum = 0, mean = 0, square = 0, within = 0;
        for (var k = 0; k < nodes.Length; k++)
        {
            var weight = Math.Exp(log[k] - top);
            var centre = Math.Log(nodes[k].M / nodes[k].A) + SpecialFunctions.DiGamma(nodes[k].A);
            sum += weight;
            mean += weight * centre;
            square += weight * centre * centre;
            within += weight * Trigamma(nodes[k].A);
        }

        mean /= sum;
        var shape = ShapeOf((within / sum) + Math.Max(0, (square / sum) - (mean * mean)));
        return (Math.Exp(mean - SpecialFunctions.DiGamma(shape)) * shape, shape);
    }

    private static double LogPosterior(double a, double m, IReadOnlyList<(double Lumps, double Exposure)> boats)
    {
        var (za, zm) = (Math.Log(a / 3) / 0.6, (Math.Log(m) - s_logMean) / 0.7);
        var sum = -((za * za) + (zm * zm)) / 2;
        var none = (a * Math.Log(a / m)) - SpecialFunctions.GammaLn(a);
        foreach (var (lumps, exposure) in boats)
            sum += none + SpecialFunctions.GammaLn(a + lumps) - ((a + lumps) * Math.Log((a / m) + exposure));
        return sum;
    }

    // Falls from infinity to nothing, so halve on the logarithm.
    private static double ShapeOf(double variance)
    {
        var (low, high) = (0.05, 1000.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = Math.Sqrt(low * high);
            if (Trigamma(middle) > variance)
                low = middle;
            else
                high = middle;
        }

        return Math.Sqrt(low * high);
    }

    // Up by its recurrence, then its asymptotic series (Abramowitz and Stegun 1964, 6.4.6 and 6.4.12; numbers from memory).
    private static double Trigamma(double x)
    {
        var sum = 0.0;
        for (; x < 8; x++)
            sum += 1 / (x * x);
        var y = 1 / (x * x);
        return sum + (1 / x) + (y / 2) + (y / x * ((1 / 6.0) - (y * ((1 / 30.0) - (y / 42)))));
    }
}
