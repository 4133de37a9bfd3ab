namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// A prior of a drift in whole counts, so that it is the same prior after it was written and read: every prior of a fleet is
/// rounded to them before anybody uses it.
/// </summary>
internal sealed class CountedPrior
{
    /// <summary>The counts of a whole prior, but for rounding.</summary>
    private const int Whole = 10_000_000;

    private readonly int[] _counts;

    private CountedPrior(int[] counts) => (_counts, Prior) = (counts, SlopePrior.Of(Array.ConvertAll(counts, c => (double)c)));

    /// <summary>One count, at least 1, for each place of the grid.</summary>
    public IReadOnlyList<int> Counts => _counts;

    public SlopePrior Prior { get; }

    /// <summary>Rounds a prior, a share of it given to drifts that fall.</summary>
    public static CountedPrior Of(SlopePrior rising, SlopePrior falling, double fallingShare)
    {
        var counts = new int[SlopeGrid.Count];
        for (var g = 0; g < counts.Length; g++)
            counts[g] = Math.Max(1, (int)Math.Round(Whole * (((1 - fallingShare) * rising.Weights[g]) + (fallingShare * falling.Weights[g]))));
        return new(counts);
    }

    /// <exception cref="ArgumentException">Another number of counts, or one that no prior has.</exception>
    public static CountedPrior Of(IReadOnlyList<int> counts, string of)
    {
        ArgumentNullException.ThrowIfNull(counts);
        if (counts.Count != SlopeGrid.Count) throw new ArgumentException($"{of}: {counts.Count} counts where the grid has {SlopeGrid.Count} places.", nameof(counts));
        foreach (var c in counts)
        {
            if (c is < 1 or > Whole) throw new ArgumentException($"{of}: a count of {c} does not lie from 1 to {Whole}.", nameof(counts));
        }

        return new([.. counts]);
    }
}
