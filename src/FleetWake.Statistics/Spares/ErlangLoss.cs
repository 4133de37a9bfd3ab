namespace FleetWake.Statistics.Spares;

/// <summary>
/// When nobody waits, but a prop that is not there is bought next door or the boat stays in: Erlang's loss formula (1917;
/// cited from memory), right for any scatter of the time a prop is away.
/// </summary>
public static class ErlangLoss
{
    /// <summary>
    /// The share of those asked for that are not on the shelf: B(0) = 1, B(S) = a B(S-1) / (S + a B(S-1)).
    /// </summary>
    /// <param name="expectedAway">How many would be away at once with endless stock, rate times lead time [1]; zero or
    /// more, finite.</param>
    /// <param name="stock">The stock S, zero or more.</param>
    /// <returns>The share [1]; 1 without stock, 0 when nothing is asked for and there is stock.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double ShareTurnedAway(double expectedAway, int stock)
    {
        if (!(expectedAway >= 0) || !double.IsFinite(expectedAway))
            throw new ArgumentOutOfRangeException(
                nameof(expectedAway), expectedAway, "Must be zero or more and finite.");
        ArgumentOutOfRangeException.ThrowIfNegative(stock);

        var B = 1.0;
        for (var S = 1; S <= stock && B > 0; S++)
            B = expectedAway * B / (S + (expectedAway * B));
        return B;
    }
}
