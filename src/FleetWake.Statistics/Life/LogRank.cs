using MathNet.Numerics.LinearAlgebra;

namespace FleetWake.Statistics.Life;

/// <summary>
/// Whether groups last equally long: Mantel, Cancer Chemother. Rep. 50 (1966) 163-170, and Peto and Peto, J. R. Statist.
/// Soc. A 135 (1972) 185-207, with the variance of the hypergeometric distribution for ties; cited from memory.
/// </summary>
public static class LogRank
{
    /// <summary>Compares groups, all ages weighing alike.</summary>
    /// <param name="groups">Two groups or more, each a set of lifetimes.</param>
    /// <returns>The verdict; null when none ended, or never while two groups were followed at once.</returns>
    /// <exception cref="ArgumentException">Fewer than two groups.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A lifetime is out of range.</exception>
    public static LogRankTest? Of(IReadOnlyList<IReadOnlyCollection<Lifetime>> groups) => OfStrata([groups]);

    /// <summary>
    /// Compares groups within strata and adds up: materials within each water, so that a material does not look bad for
    /// having been used where sand is.
    /// </summary>
    /// <param name="strata">For each stratum the same groups in the same order; a group may be empty.</param>
    /// <returns>As for <see cref="Of"/>.</returns>
    /// <exception cref="ArgumentException">Fewer than two groups, or not the same number in each stratum.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A lifetime is out of range.</exception>
    public static LogRankTest? OfStrata(IReadOnlyList<IReadOnlyList<IReadOnlyCollection<Lifetime>>> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        var count = strata.Count == 0 ? 0 : strata[0].Count;
        if (count < 2 || strata.Any(groups => groups.Count != count))
            throw new ArgumentException("Give two groups or more, and the same ones in each stratum.", nameof(strata));

        var observed = new double[count];
        var expected = new double[count];
        var V = Matrix<double>.Build.Dense(count, count);
        foreach (var groups in strata)
        {
            foreach (var life in groups.SelectMany(lives => lives))
                Lifetime.Check(life, nameof(strata));
            Add(groups, observed, expected, V);
        }

        return Judged(observed, expected, V);
    }

    private static void Add(
        IReadOnlyList<IReadOnlyCollection<Lifetime>> groups, double[] O, double[] E, Matrix<double> V)
    {
        foreach (var (t, n, d) in RiskTable.Of([.. groups.SelectMany(lives => lives)]))
        {
            var atRisk = groups
                .Select(lives => (double)lives.Count(life => life.FromHours < t && life.Hours >= t)).ToArray();
            var spread = n > 1 ? d * (double)(n - d) / (n - 1) : 0; // times p_i (delta_ij - p_j)
            for (var i = 0; i < groups.Count; i++)
            {
                O[i] += groups[i].Count(life => life.HasEnded && life.Hours == t);
                E[i] += d * atRisk[i] / n;
                for (var j = 0; j < groups.Count; j++)
                    V[i, j] += spread * (atRisk[i] / n) * ((i == j ? 1 : 0) - (atRisk[j] / n));
            }
        }
    }

    private static LogRankTest? Judged(double[] O, double[] E, Matrix<double> V)
    {
        // The rows of V add up to nothing, and groups that were never followed together cannot be told apart at all, so
        // V has no inverse. What can be told is what its pseudo-inverse uses, and its rank counts it.
        var svd = V.Svd();
        var smallest = svd.S[0] * 1e-10;
        var rank = svd.S.Count(s => s > smallest);
        if (!(svd.S[0] > 0))
            return null;

        var chiSquared = 0.0;
        for (var i = 0; i < rank; i++)
        {
            var along = 0.0;
            for (var j = 0; j < O.Length; j++)
                along += svd.U[j, i] * (O[j] - E[j]);
            chiSquared += along * along / svd.S[i];
        }

        return new LogRankTest(chiSquared, rank, ChiSquareTail.Above(chiSquared, rank), O, E);
    }
}
