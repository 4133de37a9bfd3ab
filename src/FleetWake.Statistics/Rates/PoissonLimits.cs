namespace FleetWake.Statistics.Rates;

/// <summary>
/// Exact limits of a rate from a count: Garwood, Biometrika 28 (1936) 437-442, by the identity with the chi-square
/// distribution (cited from memory).
/// </summary>
public static class PoissonLimits
{
    /// <summary>
    /// The rate count / exposure, with the rates at which so many events or more, and so many or fewer, would each come
    /// with probability (1 - level) / 2. Such limits hold the truth at least as often as they claim, often more.
    /// </summary>
    /// <param name="tally">Events and exposure.</param>
    /// <param name="level">Level of the interval, above 0 and up to 0.9999, such as 0.8.</param>
    /// <returns>
    /// Rate [events per unit of exposure]; null without exposure. None counted gives the rate 0 with an upper limit; its
    /// standard error, sqrt(count) / exposure elsewhere, is then that of one event, for none counted is not none ever
    /// (common practice, no source).
    /// </returns>
    /// <remarks>Right when events come singly and one does not bring the next. Docks that differ, or boats that share
    /// one bad skipper, scatter more: see <see cref="RateShrinkage"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The tally or the level is out of range.</exception>
    public static Estimate? Rate(Tally tally, double level)
    {
        Tally.Check(tally, nameof(tally));
        var tail = Level.Tail(level);
        if (tally.Exposure == 0)
            return null;

        var E = tally.Exposure;
        var low = tally.Count == 0 ? 0 : GammaQuantile.Lower(tally.Count, tail);
        var high = GammaQuantile.Upper(tally.Count + 1.0, tail);
        return new Estimate(
            tally.Count / E, Math.Sqrt(Math.Max(tally.Count, 1)) / E, low / E, high / E, level);
    }
}
