namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// What a fleet's trials say about their own noise: how large it is, how unlike between boats, how many are gross errors. One
/// gauge and the same people belong to a boat, so its mountings share one noise.
/// </summary>
internal sealed class NoiseFit
{
    /// <summary>Shares of the RPM, a fifth apart: 0.35 % to 1.8 %.</summary>
    public static readonly double[] Shares = [.. Enumerable.Range(0, 9).Select(j => NoiseNodes.LeastShare * Math.Pow(1.225, j))];

    // Beliefs before the fleet: a double run scatters by 0.7 % (engineering judgement, no source); boats differ by a fifth.
    private static readonly double[] Median = [.. Enumerable.Range(0, 11).Select(i => 0.0042 * Math.Pow(1.11, i))];
    private static readonly double[] LogSd = [0.06, 0.12, 0.2, 0.3, 0.42];
    private static readonly double[] Gross = [0.005, 0.01, 0.02, 0.03, 0.045, 0.065, 0.09];
    private const int Sets = 4; // 0, 1, 2, 3 or more gross errors

    // A spread of drifts wide enough for any group, only to leave one number for each node [rpm per 100 h].
    private const double LooseMean = 8;
    private const double LooseSd = 14;

    public required double GrossChance { get; init; }

    /// <summary>Weights of <see cref="Shares"/> for a boat that has no trials yet.</summary>
    public required double[] Unseen { get; init; }

    /// <summary>For each member: weights from the other mountings of its boat.</summary>
    public required double[][] Others { get; init; }

    public static NoiseFit Of(IReadOnlyList<Mixture?> mixtures, IReadOnlyList<int> boats, int boatCount)
    {
        var evidence = mixtures.Select(m => m is null ? null : Evidence(m)).ToArray();
        var n = mixtures.Select(m => m?.Design.Trials ?? 0).ToArray();
        var combos = new List<(double Log, double[] Node, double Gross)>();
        // log likelihood of each node by member, for each chance of a gross error
        var tables = Gross.Select(e => Enumerable.Range(0, evidence.Length).Select(m => evidence[m] is { } v ? ByNode(v, n[m], e) : null).ToArray()).ToArray();
        var boatLog = tables.Select(t => SumByBoat(t, boats, boatCount)).ToArray();
        for (var e = 0; e < Gross.Length; e++)
        {
            foreach (var median in Median)
            {
                foreach (var sd in LogSd)
                {
                    var node = NodeWeights(median, sd);
                    var z = Math.Log(median / 0.007) / 0.3;
                    // Beta(2, 50) for the gross errors, on a grid of equal ratios about.
                    var log = (-0.5 * z * z) - (0.5 * sd * sd / 0.09) + (2 * Math.Log(Gross[e])) + (49 * Math.Log(1 - Gross[e]));
                    for (var b = 0; b < boatCount; b++) log += LogSum(boatLog[e][b], node);
                    combos.Add((log, node, Gross[e]));
                }
            }
        }

        var top = combos.Max(c => c.Log);
        var total = 0.0;
        var (chance, unseen) = (0.0, new double[Shares.Length]);
        foreach (var c in combos)
        {
            var w = Math.Exp(c.Log - top);
            total += w;
            chance += w * c.Gross;
            for (var j = 0; j < unseen.Length; j++) unseen[j] += w * c.Node[j];
        }

        for (var j = 0; j < unseen.Length; j++) unseen[j] /= total;
        chance /= total;
        var best = Array.IndexOf(Gross, Gross.MinBy(e => Math.Abs(e - chance)));
        var others = new double[evidence.Length][];
        for (var m = 0; m < others.Length; m++)
        {
            var log = new double[Shares.Length];
            for (var j = 0; j < log.Length; j++)
                log[j] = Math.Log(unseen[j] + 1e-12) + (boats[m] < 0 ? 0 : boatLog[best][boats[m]][j] - (tables[best][m]?[j] ?? 0));
            others[m] = Exp(log);
        }

        return new() { GrossChance = chance, Unseen = unseen, Others = others };
    }

    /// <summary>Weights of <see cref="Shares"/> as a log-normal belief of the same mean and spread: five nodes instead of nine.</summary>
    public static NoiseFigures LogNormal(double[] weights)
    {
        double mean = 0, square = 0;
        for (var j = 0; j < weights.Length; j++)
        {
            mean += weights[j] * Math.Log(Shares[j]);
            square += weights[j] * Math.Log(Shares[j]) * Math.Log(Shares[j]);
        }

        return new(Math.Exp(mean), Math.Sqrt(Math.Max(0, square - (mean * mean))));
    }

    /// <summary>Log evidence by node and number of gross errors, the drift loosely integrated.</summary>
    private static double[,] Evidence(Mixture mixture)
    {
        var log = new double[Shares.Length, Sets];
        for (var j = 0; j < Shares.Length; j++)
        {
            for (var z = 0; z < Sets; z++) log[j, z] = double.NegativeInfinity;
        }

        const double prior = 1 / (LooseSd * LooseSd);
        foreach (ref readonly var c in mixture.Components.AsSpan())
        {
            var precision = c.Xx + prior;
            var mean = c.Xu + (prior * LooseMean);
            var value = c.Log + (0.5 * mean * mean / precision) - (0.5 * Math.Log(precision));
            ref var cell = ref log[c.Node, Math.Min(c.Gross, Sets - 1)];
            cell = Add(cell, value);
        }

        return log;
    }

    private static double[] ByNode(double[,] evidence, int n, double gross)
    {
        var log = new double[Shares.Length];
        for (var j = 0; j < log.Length; j++)
        {
            log[j] = double.NegativeInfinity;
            for (var z = 0; z < Sets && z <= n; z++)
                log[j] = Add(log[j], evidence[j, z] + (z * Math.Log(gross)) + ((n - z) * Math.Log(1 - gross)));
        }

        return log;
    }

    private static double[][] SumByBoat(double[]?[] byMember, IReadOnlyList<int> boats, int count)
    {
        var sum = Enumerable.Range(0, count).Select(_ => new double[Shares.Length]).ToArray();
        for (var m = 0; m < byMember.Length; m++)
        {
            if (boats[m] < 0 || byMember[m] is not { } log) continue;
            for (var j = 0; j < log.Length; j++) sum[boats[m]][j] += log[j];
        }

        return sum;
    }

    private static double[] NodeWeights(double median, double sd) =>
        Exp([.. Shares.Select(s => -0.5 * Math.Pow(Math.Log(s / median) / sd, 2))]);

    private static double[] Exp(double[] log)
    {
        var top = log.Max();
        var w = Array.ConvertAll(log, x => Math.Exp(x - top));
        var sum = w.Sum();
        return Array.ConvertAll(w, x => x / sum);
    }

    private static double LogSum(double[] log, double[] weight)
    {
        var top = log.Max();
        var sum = 0.0;
        for (var j = 0; j < log.Length; j++) sum += weight[j] * Math.Exp(log[j] - top);
        return top + Math.Log(sum);
    }

    private static double Add(double a, double b)
    {
        if (double.IsNegativeInfinity(a)) return b;
        return a > b ? a + Math.Log(1 + Math.Exp(b - a)) : b + Math.Log(1 + Math.Exp(a - b));
    }
}
