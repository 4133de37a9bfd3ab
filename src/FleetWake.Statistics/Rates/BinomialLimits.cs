using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics.Rates;

/// <summary>Exact limits of a share from a count: Clopper and Pearson, Biometrika 26 (1934) 404-413 (cited from memory).</summary>
public static class BinomialLimits
{
    /// <summary>
    /// The share count / tries, with the shares at which so many or more, and so many or fewer, would each come with
    /// probability (1 - level) / 2. Such limits hold the truth at least as often as they claim, often more.
    /// </summary>
    /// <param name="count">How many did, zero to <paramref name="tries"/>.</param>
    /// <param name="tries">How many there were.</param>
    /// <param name="level">Level of the interval, above 0 and up to 0.9999, such as 0.8.</param>
    /// <returns>A share [1]; null without a try.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count or the level is out of range.</exception>
    public static Estimate? Share(int count, int tries, double level)
    {
        if (tries < 0) throw new ArgumentOutOfRangeException(nameof(tries), tries, "Must be zero or more.");
        if (count < 0 || count > tries) throw new ArgumentOutOfRangeException(nameof(count), count, "Must lie from zero to the tries.");
        var tail = Level.Tail(level);
        if (tries == 0) return null;
        var share = (double)count / tries;
        var low = count == 0 ? 0 : Beta.InvCDF(count, tries - count + 1, tail);
        var high = count == tries ? 1 : Beta.InvCDF(count + 1, tries - count, 1 - tail);
        return new Estimate(share, Math.Sqrt(share * (1 - share) / tries), low, high, level);
    }
}
