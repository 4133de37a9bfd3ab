namespace FleetWake.Statistics.Drift;

/// <summary>
/// The likelihood of a series as a finite mixture over noise nodes and sets of gross errors. Up to <see cref="FewTrials"/>
/// trials every set of two gross errors or fewer is in it (one or fewer with three trials or fewer); above, the sets that
/// differ from the likeliest one by two trials or fewer, among the trials whose state is least certain.
/// </summary>
internal sealed class Mixture
{
    private const int FewTrials = 24;
    private const int Doubtful = 10;

    private Mixture(Design design, Component[] components, bool[] baseSet, NodeFit[] fits) =>
        (Design, Components, BaseSet, Nodes, Fits) = (design, components, baseSet, fits.Length, design.Steps.Count > 0 ? fits : []);

    public Design Design { get; }

    public Component[] Components { get; }

    /// <summary>The set of gross errors that the flips of a component start from.</summary>
    public bool[] BaseSet { get; }

    /// <summary>How many components follow each other with one set of gross errors: one for each noise node.</summary>
    public int Nodes { get; }

    /// <summary>The fit of each noise node, kept where there are steps to tell.</summary>
    public NodeFit[] Fits { get; }

    public static Mixture Of(Design design, DriftSettings settings)
    {
        var n = design.Trials;
        var nodes = NoiseNode.Of(settings, design.MedianRpm);
        var baseSet = new bool[n];
        int[] candidates = n <= FewTrials ? [.. Enumerable.Range(0, n)] : LikeliestSet.Find(design, nodes, settings, baseSet, Doubtful);
        var fits = Array.ConvertAll(nodes, node => new NodeFit(design, node, baseSet));
        var k = candidates.Length;
        var components = new Component[nodes.Length * (1 + k + (n > 3 ? k * (k - 1) / 2 : 0))];
        var at = 0;
        foreach (var fit in fits) components[at++] = fit.Base();
        for (var a = 0; a < k; a++)
        {
            foreach (var fit in fits) components[at++] = fit.Flip(candidates[a]);
            for (var b = a + 1; n > 3 && b < k; b++)
            {
                foreach (var fit in fits) components[at++] = fit.Flip(candidates[a], candidates[b]);
            }
        }

        return new(design, components, baseSet, fits);
    }

    /// <summary>log weight of each component: its node's, and that of its number of gross errors.</summary>
    public double[] LogWeights(ReadOnlySpan<double> nodeWeights, double grossChance)
    {
        var (bad, good) = (Math.Log(grossChance), Math.Log(1 - grossChance));
        Span<double> node = stackalloc double[nodeWeights.Length];
        for (var j = 0; j < node.Length; j++) node[j] = Math.Log(nodeWeights[j]);
        var log = new double[Components.Length];
        for (var c = 0; c < log.Length; c++)
        {
            ref readonly var of = ref Components[c];
            log[c] = node[of.Node] + (of.Gross * bad) + ((Design.Trials - of.Gross) * good) + of.Log;
        }

        return log;
    }
}
