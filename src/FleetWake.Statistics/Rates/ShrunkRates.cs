namespace FleetWake.Statistics.Rates;

/// <summary>What <see cref="RateShrinkage"/> says of a fleet. Rates are events per unit of exposure.</summary>
/// <param name="FleetMean">The mean m of the true rates.</param>
/// <param name="Spread">How far the true rates differ, sd over mean [1], 0 to 1.5: 0 when all units are alike.</param>
/// <param name="Units">One for each tally, in order.</param>
/// <param name="Unseen">The rate of a unit like these that has no record yet.</param>
public sealed record ShrunkRates(
    Estimate FleetMean, Estimate Spread, IReadOnlyList<ShrunkRate> Units, Estimate Unseen);
