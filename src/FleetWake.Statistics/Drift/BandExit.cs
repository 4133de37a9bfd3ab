namespace FleetWake.Statistics.Drift;

/// <summary>When the level leaves the rated band at its upper end, in engine hours after the last trial.</summary>
/// <param name="EarliestHours">The hours before which it has left with a chance of 10 % [h].</param>
/// <param name="MedianHours">The hours before which it has left with a chance of one half [h].</param>
/// <param name="LatestHours">The hours before which it has left with a chance of 90 % [h].</param>
/// <param name="Within500HoursChance">Chance that it has left within 500 h [1].</param>
/// <remarks>
/// 0 hours says that it is outside already, <see cref="HorizonHours"/> that it leaves beyond the horizon, if ever: nobody
/// keeps a prop that long.
/// </remarks>
public sealed record BandExit(double EarliestHours, double MedianHours, double LatestHours, double Within500HoursChance)
{
    /// <summary>The horizon [h].</summary>
    public const double HorizonHours = 2000;

    // 0, then 60 hours from 5 to the horizon in equal ratios: a forecast has a relative error, not an absolute one.
    private static readonly double[] Grid =
        [0, .. Enumerable.Range(0, 60).Select(i => Math.Exp(Math.Log(5) + (i * Math.Log(HorizonHours / 5) / 59)))];

    /// <summary>P(H &lt;= x) on the grid: sum of w_cg Phi((level_cg + s_g x / 100 - top) / sd_c).</summary>
    internal static BandExit Of(Mixture mixture, ReadOnlySpan<double> logWeights, double scale, ReadOnlySpan<double> prior, double topRpm)
    {
        var chance = new double[Grid.Length];
        var within = 0.0;
        var total = 0.0;
        Span<double> slope = stackalloc double[SlopeGrid.Count];
        for (var k = 0; k < mixture.Components.Length; k++)
        {
            ref readonly var c = ref mixture.Components[k];
            if (SlopeLikelihood.Peak(c, logWeights[k]) - scale < -Negligible) continue;
            slope.Clear();
            SlopeLikelihood.Add(c, logWeights[k] - scale, slope);
            var weight = 0.0;
            for (var g = 0; g < slope.Length; g++) weight += slope[g] *= prior[g];
            total += weight;
            var sd = Math.Sqrt(Math.Max(c.LevelVariance, 1e-12));
            for (var g = 0; g < slope.Length; g++)
            {
                if (slope[g] < weight * 1e-9) continue;
                var s = SlopeGrid.At(g);
                var margin = (c.Level + (c.LevelPerSlope * s) - topRpm) / sd;
                // A level that falls leaves the upper end now or never.
                var perHour = Math.Max(s, 0) / 100 / sd;
                for (var x = 0; x < Grid.Length; x++) chance[x] += slope[g] * Normal.Cdf(margin + (perHour * Grid[x]));
                within += slope[g] * Normal.Cdf(margin + (perHour * 500));
            }
        }

        for (var x = 0; x < chance.Length; x++) chance[x] /= total;
        return new(Invert(chance, 0.1), Invert(chance, 0.5), Invert(chance, 0.9), within / total);
    }

    private const double Negligible = 16;

    private static double Invert(double[] chance, double share)
    {
        if (chance[0] >= share) return 0;
        for (var x = 1; x < Grid.Length; x++)
        {
            if (chance[x] >= share)
                return Grid[x - 1] + ((Grid[x] - Grid[x - 1]) * (share - chance[x - 1]) / (chance[x] - chance[x - 1]));
        }

        return HorizonHours;
    }
}
