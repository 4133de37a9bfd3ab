namespace FleetWake.Statistics.Drift;

/// <summary>What the mixture says beside the drift: the level now, and which trials are gross errors.</summary>
internal static class Marginals
{
    private const double Z10 = 1.2815515655446004; // 90 % point of the standard normal

    /// <param name="mixture">All components.</param>
    /// <param name="logWeights">Their log weights.</param>
    /// <param name="scale">As <see cref="SlopeLikelihood.Sum"/> gave.</param>
    /// <param name="prior">Prior on the grid.</param>
    /// <param name="places">The place in the input of each trial.</param>
    /// <param name="count">Trials in the input.</param>
    public static (Estimate Level, double[] Gross) Of(
        Mixture mixture, ReadOnlySpan<double> logWeights, double scale, ReadOnlySpan<double> prior, int[] places, int count)
    {
        var gross = new double[count];
        double total = 0, first = 0, second = 0;
        var flips = new double[places.Length]; // weight of the components in which a trial differs from the base set
        Span<double> curve = stackalloc double[SlopeGrid.Count];
        for (var k = 0; k < mixture.Components.Length; k++)
        {
            ref readonly var c = ref mixture.Components[k];
            curve.Clear();
            SlopeLikelihood.Add(c, logWeights[k] - scale, curve);
            double w = 0, ws = 0, wss = 0;
            for (var g = 0; g < curve.Length; g++)
            {
                var v = curve[g] * prior[g];
                w += v;
                ws += v * g;
                wss += v * g * g;
            }

            if (!(w > 0)) continue;
            var mean = (ws / w) + SlopeGrid.Lowest;
            var variance = Math.Max(0, (wss / w) - (ws / w * (ws / w)));
            var level = c.Level + (c.LevelPerSlope * mean);
            total += w;
            first += w * level;
            second += w * ((level * level) + c.LevelVariance + (c.LevelPerSlope * c.LevelPerSlope * variance));
            if (c.Flip1 >= 0) flips[c.Flip1] += w;
            if (c.Flip2 >= 0) flips[c.Flip2] += w;
        }

        for (var i = 0; i < places.Length; i++)
            gross[places[i]] = Math.Clamp(mixture.BaseSet[i] ? 1 - (flips[i] / total) : flips[i] / total, 0, 1);
        var m = first / total;
        var sd = Math.Sqrt(Math.Max(0, (second / total) - (m * m)));
        return (new(m, sd, m - (Z10 * sd), m + (Z10 * sd), 0.8), gross);
    }
}
