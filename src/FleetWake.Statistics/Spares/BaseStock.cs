namespace FleetWake.Statistics.Spares;

/// <summary>
/// One prop is ordered for each one used, so that shelf and orders always add up to S. What is missing from the shelf is
/// what was asked for during the last lead time (Palm 1938; Sherbrooke, Operations Res. 16 (1968) 122-141; cited from
/// memory), whatever the lead time's own scatter when demand is Poisson.
/// </summary>
public static class BaseStock
{
    /// <summary>The figures of a stock.</summary>
    /// <param name="need">The need over one lead time.</param>
    /// <param name="stock">The stock S, zero or more.</param>
    /// <returns>The figures. The fill rate is exact for Poisson needs; for others it says how often a prop is there at an
    /// arbitrary moment.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative stock.</exception>
    public static StockFigures Of(Need need, int stock)
    {
        ArgumentNullException.ThrowIfNull(need);
        ArgumentOutOfRangeException.ThrowIfNegative(stock);
        return new StockFigures(
            stock, need.AtMost(stock), need.AtMost(stock - 1), need.ExpectedShort(stock), need.ExpectedLeft(stock));
    }

    /// <summary>The smallest stock with which nobody waits for a share of the time.</summary>
    /// <param name="need">The need over one lead time.</param>
    /// <param name="readyRate">The share [1], 0 to 1 exclusive, such as 0.95.</param>
    /// <returns>The stock and its figures.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1.</exception>
    public static StockFigures ForReadyRate(Need need, double readyRate)
    {
        ArgumentNullException.ThrowIfNull(need);
        return Of(need, need.Enough(readyRate));
    }

    /// <summary>The smallest stock from which a share of what is asked for is handed over at once.</summary>
    /// <param name="need">The need over one lead time.</param>
    /// <param name="fillRate">The share [1], 0 to 1 exclusive.</param>
    /// <returns>The stock and its figures; no stock when nothing can be asked for.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1.</exception>
    public static StockFigures ForFillRate(Need need, double fillRate)
    {
        ArgumentNullException.ThrowIfNull(need);
        var enough = need.Enough(fillRate);
        return Of(need, need.Greatest == 0 ? 0 : enough + 1);
    }
}
