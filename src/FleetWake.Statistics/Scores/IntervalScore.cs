namespace FleetWake.Statistics.Scores;

/// <summary>
/// How good intervals were, their width and their misses in one number, less is better: Gneiting and Raftery, J. Am. Statist.
/// Assoc. 102 (2007) 359-378, equation 43. Nobody gains by stating an interval wider or narrower than is believed.
/// </summary>
public static class IntervalScore
{
    /// <summary>(high - low), and 2/alpha times the distance by which the value lies outside; alpha = 1 - level.</summary>
    /// <param name="low">Lower limit.</param>
    /// <param name="high">Upper limit, at least the lower.</param>
    /// <param name="level">Level claimed, 0 to 1 exclusive.</param>
    /// <param name="value">What came.</param>
    /// <returns>The score in the unit of the value, zero or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, limits the wrong way round, or no level.</exception>
    public static double Of(double low, double high, double level, double value)
    {
        if (!(double.IsFinite(low) && double.IsFinite(high) && low <= high)) throw new ArgumentOutOfRangeException(nameof(high), high, "Limits must be finite and the right way round.");
        if (!(level > 0 && level < 1)) throw new ArgumentOutOfRangeException(nameof(level), level, "Must lie between 0 and 1.");
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "Must be finite.");
        return high - low + (2 / (1 - level) * (Math.Max(0, low - value) + Math.Max(0, value - high)));
    }
}
