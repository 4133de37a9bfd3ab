namespace FleetWake.Statistics.Spares;

/// <summary>
/// One order before the season, none after: buy so many that the chance of selling one more pays for it no longer
/// (Arrow, Harris and Marschak, Econometrica 19 (1951) 250-272; cited from memory).
/// </summary>
public static class Newsvendor
{
    /// <summary>The smallest Q with P(D at most Q) at least short / (short + left).</summary>
    /// <param name="need">The need over the season.</param>
    /// <param name="costOfOneShort">What one prop wanting costs, such as lost hire days [the caller's currency]; above
    /// zero, finite.</param>
    /// <param name="costOfOneLeft">What one prop left over costs [the same currency]; above zero, finite.</param>
    /// <returns>How many to have.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A cost is not above zero, or not finite.</exception>
    public static int Quantity(Need need, double costOfOneShort, double costOfOneLeft)
    {
        ArgumentNullException.ThrowIfNull(need);
        Check(costOfOneShort, nameof(costOfOneShort));
        Check(costOfOneLeft, nameof(costOfOneLeft));

        var ratio = 1 / (1 + (costOfOneLeft / costOfOneShort));
        return need.Enough(Math.Clamp(ratio, double.Epsilon, 1 - 1e-15)); // costs sixteen digits apart are no plan
    }

    private static void Check(double cost, string name)
    {
        if (!(cost > 0) || !double.IsFinite(cost))
            throw new ArgumentOutOfRangeException(name, cost, "Must be above zero and finite.");
    }
}
