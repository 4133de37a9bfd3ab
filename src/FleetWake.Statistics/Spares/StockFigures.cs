namespace FleetWake.Statistics.Spares;

/// <summary>What a base stock does over the lead time, see <see cref="BaseStock"/>.</summary>
/// <param name="Stock">The stock S: on the shelf and on order together.</param>
/// <param name="ReadyRate">The share of time in which nobody waits, P(D at most S) [1].</param>
/// <param name="FillRate">The share of those asked for that are on the shelf at once, P(D below S) [1].</param>
/// <param name="ExpectedWaiting">How many are being waited for, on average.</param>
/// <param name="ExpectedOnHand">How many lie on the shelf, on average.</param>
public sealed record StockFigures(
    int Stock, double ReadyRate, double FillRate, double ExpectedWaiting, double ExpectedOnHand);
