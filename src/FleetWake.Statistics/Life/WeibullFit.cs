namespace FleetWake.Statistics.Life;

/// <summary>
/// Weibull lifetimes by maximum likelihood, S(t) = exp(-(t / eta)^k), with lives that have not ended and lives followed
/// from some age only (Cohen, Technometrics 7 (1965) 579-588, equation for the shape; Lawless, Statistical Models and
/// Methods for Lifetime Data 2003, chapter 5; both cited from memory).
/// </summary>
public static class WeibullFit
{
    /// <summary>Fewest ends from which a shape is told: below it the likelihood has no maximum worth the name.</summary>
    public const int FewestEnds = 2;

    /// <summary>Fits one group. With few ends the shape comes out too high on average; the interval knows.</summary>
    /// <param name="lives">The lifetimes.</param>
    /// <param name="level">Level of all intervals, above 0 and up to 0.9999, such as 0.8.</param>
    /// <returns>The life; null with fewer than <see cref="FewestEnds"/> ends, or when the shape is not within 0.02 and
    /// 200, as when all ends fall on one age. Without an end the exposure still bounds the rate: see
    /// <see cref="FleetWake.Statistics.Rates.PoissonLimits"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A lifetime or the level is out of range.</exception>
    public static WeibullLife? Of(IReadOnlyCollection<Lifetime> lives, double level) => OfGroups([lives], level)?[0];

    /// <summary>
    /// Fits groups that wear the same way but not as fast: one shape, a scale for each. Materials with few ends borrow
    /// the shape from the others.
    /// </summary>
    /// <param name="groups">The groups, one or more.</param>
    /// <param name="level">As for <see cref="Of"/>.</param>
    /// <returns>A life for each group, in order, null for a group of which none has ended; null altogether as for
    /// <see cref="Of"/>, counting the ends of all groups.</returns>
    /// <exception cref="ArgumentException">No group.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A lifetime or the level is out of range.</exception>
    public static IReadOnlyList<WeibullLife?>? OfGroups(
        IReadOnlyList<IReadOnlyCollection<Lifetime>> groups, double level)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count == 0)
            throw new ArgumentException("Give one group or more.", nameof(groups));
        var z = Level.NormalQuantile(level);
        foreach (var life in groups.SelectMany(lives => lives))
            Lifetime.Check(life, nameof(groups));
        var ends = groups.Sum(lives => lives.Count(life => life.HasEnded));
        if (ends < FewestEnds)
            return null;

        var profile = new WeibullProfile([.. groups.Select(lives => new WeibullGroup([.. lives]))]);
        if (profile.BestShape() is not { } k)
            return null;
        var fall = z * z / 2 * ends / (ends - 1);
        return [.. groups.Select((lives, g) =>
            lives.Any(life => life.HasEnded) ? new WeibullLife(profile, g, k, level, fall) : null)];
    }
}
