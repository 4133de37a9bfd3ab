namespace FleetWake.Statistics.Drift;

/// <summary>All that a mixture says under a prior, from one pass over its components.</summary>
internal sealed class Marginals
{
    /// <summary>Sets of gross errors with more than this share of the weight keep a level of their own.</summary>
    private const double OwnLevel = 2e-3;
    private const int MostLevels = 6;

    /// <summary>Components with less than this share of the weight so far are not asked about steps.</summary>
    private const double Unsaid = 1e-8;

    /// <summary>Weight of each drift, not brought to the sum 1.</summary>
    public ReadOnlySpan<double> Weights => All.Weight[..SlopeGrid.Count];

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
        Span<double> padded = stackalloc double[SlopeLikelihood.Length];
        padded.Clear();
        prior.CopyTo(padded);
        Span<double> curve = stackalloc double[SlopeLikelihood.Length];
        var all = new Levels(mixture.Design.MedianRpm);
        var sets = new double[components.Length / mixture.Nodes];
        var gross = new double[mixture.Design.Trials];
        var drifts = mixture.Design.Steps.Count > 0 ? new DriftSums[components.Length] : null;
        var total = 0.0;
        for (var k = 0; k < components.Length; k++)
        {
            if (!SlopeLikelihood.Fill(components[k], logWeights[k] - scale, curve)) continue;
            var w = all.Add(components[k], curve, padded);
            total += w;
            if (drifts is not null && w > Unsaid * total) drifts[k] = SlopeLikelihood.Sums(curve, padded);
            sets[k / mixture.Nodes] += w;
            if (components[k].Flip1 >= 0) gross[components[k].Flip1] += w;
            if (components[k].Flip2 >= 0) gross[components[k].Flip2] += w;
        }

        var bySet = new List<Levels>();
        var rest = new Levels(mixture.Design.MedianRpm);
        var likely = Enumerable.Range(0, sets.Length).Where(s => sets[s] > OwnLevel * total).OrderByDescending(s => sets[s]).Take(MostLevels).ToHashSet();
        foreach (var s in likely)
        {
            var own = new Levels(mixture.Design.MedianRpm);
            for (var k = s * mixture.Nodes; k < (s + 1) * mixture.Nodes; k++)
            {
                if (SlopeLikelihood.Fill(components[k], logWeights[k] - scale, curve)) own.Add(components[k], curve, padded);
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
