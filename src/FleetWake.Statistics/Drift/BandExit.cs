using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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

    /// <summary>P(H &lt;= x) = sum over sets of gross errors and drifts of w Phi((level + s x / 100 - top) / sd).</summary>
    internal static BandExit Of(Marginals marginals, double topRpm)
    {
        var most = ((marginals.BySet.Count * SlopeGrid.Count) + 3) & ~3;
        var terms = new double[3 * most]; // weights, margins at the last trial, what an hour adds, padded with weights of 0
        var (weights, margins, perHour) = (terms.AsMemory(0, most), terms.AsMemory(most, most), terms.AsMemory(2 * most, most));
        var at = 0;
        foreach (var levels in marginals.BySet)
        {
            for (var g = 0; g < SlopeGrid.Count; g++)
            {
                var weight = levels.Weight[g] / marginals.Total;
                if (weight < 1e-7) continue;
                var (mean, sd) = levels.At(g);
                weights.Span[at] = weight;
                margins.Span[at] = (levels.Origin + mean - topRpm) / sd;
                // A level that falls leaves the upper end now or never.
                perHour.Span[at++] = Math.Max(SlopeGrid.At(g), 0) / 100 / sd;
            }
        }

        var used = (at + 3) & ~3;
        var chance = new ChanceByHours(weights[..used], margins[..used], perHour[..used]);
        var (now, ever) = (chance.At(0), chance.At(HorizonHours));
        return new(Invert(chance, now, ever, 0.1), Invert(chance, now, ever, 0.5), Invert(chance, now, ever, 0.9), chance.At(500));
    }

    /// <summary>The chance never falls with the hours: halve the grid, then a straight line between two of its places.</summary>
    private static double Invert(ChanceByHours chance, double below, double above, double share)
    {
        if (below >= share) return 0;
        if (above < share) return HorizonHours;
        var (low, high) = (0, Grid.Length - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            var here = chance.At(Grid[middle]);
            if (here < share) (low, below) = (middle, here);
            else (high, above) = (middle, here);
        }

        return Grid[low] + ((Grid[high] - Grid[low]) * (share - below) / (above - below));
    }

    private sealed class ChanceByHours(ReadOnlyMemory<double> weights, ReadOnlyMemory<double> margins, ReadOnlyMemory<double> perHour)
    {
        public double At(double hours)
        {
            var w = MemoryMarshal.Cast<double, Vector256<double>>(weights.Span);
            var m = MemoryMarshal.Cast<double, Vector256<double>>(margins.Span);
            var h = MemoryMarshal.Cast<double, Vector256<double>>(perHour.Span);
            var (x, sum) = (Vector256.Create(hours), Vector256<double>.Zero);
            for (var i = 0; i < w.Length; i++) sum += w[i] * Normal.Cdf(m[i] + (h[i] * x));
            return Math.Clamp(Vector256.Sum(sum), 0, 1);
        }
    }
}
