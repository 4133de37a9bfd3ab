using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>All that a mixture says under a prior, from one pass over its components.</summary>
internal sealed class Marginals
{
    /// <summary>Sets of gross errors with more than this share of the weight keep a level of their own.</summary>
    private const double OwnLevel = 2e-3;
    private const int MostLevels = 6;

    /// <summary>What all weights were divided by, as a logarithm.</summary>
    public required double Scale { get; init; }

    public required double Total { get; init; }

    /// <summary>The level, all components together.</summary>
    public required Levels All { get; init; }

    /// <summary>The level by sets of gross errors, the unlikely ones together.</summary>
    public required List<Levels> BySet { get; init; }

    /// <summary>For each trial in the order of time: chance that it is a gross error.</summary>
    public required double[] Gross { get; init; }

    /// <summary>For each component its weight and drift, where there are steps to tell; otherwise null.</summary>
    public DriftSums[]? Drifts { get; init; }

    public static Marginals Of(Mixture mixture, ReadOnlySpan<double> logWeights, ReadOnlySpan<double> prior)
    {
        var components = mixture.Components;
        var scale = SlopeLikelihood.Scale(components, logWeights);
        Span<Vector256<double>> padded = stackalloc Vector256<double>[SlopeLikelihood.Vectors];
        padded.Clear();
        prior.CopyTo(MemoryMarshal.Cast<Vector256<double>, double>(padded));
        var all = new Levels(mixture.Design.MedianRpm);
        var sets = new double[components.Length / mixture.Nodes];
        var gross = new double[mixture.Design.Trials];
        var drifts = mixture.Design.Steps.Count > 0 ? new DriftSums[components.Length] : null;
        var total = 0.0;
        for (var k = 0; k < components.Length; k++)
        {
            ref readonly var c = ref components[k];
            var log = logWeights[k] - scale;
            if (SlopeLikelihood.IsNegligible(c, log)) continue;
            var sums = all.Add(c, log, padded);
            var w = sums.Weight;
            total += w;
            if (drifts is not null) drifts[k] = sums;
            sets[k / mixture.Nodes] += w;
            if (c.Flip1 >= 0) gross[c.Flip1] += w;
            if (c.Flip2 >= 0) gross[c.Flip2] += w;
        }

        var bySet = new List<Levels>();
        var rest = new Levels(mixture.Design.MedianRpm);
        var likely = Enumerable.Range(0, sets.Length).Where(s => sets[s] > OwnLevel * total).OrderByDescending(s => sets[s]).Take(MostLevels).ToHashSet();
        foreach (var s in likely)
        {
            var own = new Levels(mixture.Design.MedianRpm);
            for (var k = s * mixture.Nodes; k < (s + 1) * mixture.Nodes; k++)
            {
                var log = logWeights[k] - scale;
                if (!SlopeLikelihood.IsNegligible(components[k], log)) own.Add(components[k], log, padded);
            }

            bySet.Add(own);
        }

        rest.Copy(all);
        foreach (var own in bySet) rest.Subtract(own);
        bySet.Add(rest);
        for (var i = 0; i < gross.Length; i++)
            gross[i] = Math.Clamp(mixture.BaseSet[i] ? 1 - (gross[i] / total) : gross[i] / total, 0, 1);
        return new() { Scale = scale, Total = total, All = all, BySet = bySet, Gross = gross, Drifts = drifts };
    }
}
