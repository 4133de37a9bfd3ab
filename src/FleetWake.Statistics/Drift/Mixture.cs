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
    private const double Budget = 2e8;

    private Mixture(Design design, Component[] components, bool[] baseSet) => (Design, Components, BaseSet) = (design, components, baseSet);

    public Design Design { get; }

    public Component[] Components { get; }

    /// <summary>The set of gross errors that the flips of a component start from.</summary>
    public bool[] BaseSet { get; }

    public static Mixture Of(Design design, DriftSettings settings)
    {
        var n = design.Trials;
        var maker = new ComponentMaker(design);
        var shares = settings.Noise.Shares;
        var baseSet = new bool[n];
        var cost = (double)shares.Length * design.Columns * design.Columns * design.Columns; // of one set [multiplications]
        int[] candidates = n <= FewTrials ? [.. Enumerable.Range(0, n)]
            : n * cost <= Budget ? LikeliestSet.Find(design, maker, settings, baseSet, Doubtful)
            : []; // a step at nearly every trial: each has its own level, and a gross error passes for one

        var sum = maker.NewSum();
        var count = 0;
        for (var i = 0; i < n; i++)
        {
            if (!baseSet[i]) continue;
            maker.Add(sum, i, 1);
            count++;
        }

        var pairs = n > 3;
        var k = candidates.Length;
        var components = new Component[shares.Length * (1 + k + (pairs ? k * (k - 1) / 2 : 0))];
        var r = design.MedianRpm;
        Span<double> fine = stackalloc double[shares.Length];
        Span<double> gross = stackalloc double[shares.Length];
        for (var j = 0; j < shares.Length; j++)
        {
            fine[j] = r * r * shares[j] * shares[j];
            gross[j] = r * r * ((shares[j] * shares[j]) + (settings.GrossShare * settings.GrossShare));
        }

        var at = 0;
        void All(ComponentMaker.GrossSum set, ReadOnlySpan<double> fine, ReadOnlySpan<double> gross)
        {
            for (var j = 0; j < fine.Length; j++) components[at++] = maker.Make(j, fine[j], gross[j], set);
        }

        int Flip(int i, int way)
        {
            var sign = (baseSet[i] ? -1 : 1) * way;
            maker.Add(sum, i, sign);
            return sign;
        }

        All(new(sum, count, -1, -1), fine, gross);
        for (var a = 0; a < k; a++)
        {
            var first = Flip(candidates[a], 1);
            All(new(sum, count + first, candidates[a], -1), fine, gross);
            for (var b = a + 1; pairs && b < k; b++)
            {
                var second = Flip(candidates[b], 1);
                All(new(sum, count + first + second, candidates[a], candidates[b]), fine, gross);
                Flip(candidates[b], -1);
            }

            Flip(candidates[a], -1);
        }

        return new(design, components, baseSet);
    }

    /// <summary>Whether a trial is a gross error in a component.</summary>
    public bool IsGross(in Component c, int trial) => BaseSet[trial] ^ (c.Flip1 == trial || c.Flip2 == trial);

    /// <summary>log weight of each component: its node's, and that of its number of gross errors.</summary>
    public double[] LogWeights(ReadOnlySpan<double> nodeWeights, double grossChance)
    {
        var (bad, good) = (Math.Log(grossChance), Math.Log(1 - grossChance));
        var log = new double[Components.Length];
        for (var c = 0; c < log.Length; c++)
        {
            var z = Components[c].Gross;
            log[c] = Math.Log(nodeWeights[Components[c].Node]) + (z * bad) + ((Design.Trials - z) * good) + Components[c].Log;
        }

        return log;
    }
}
