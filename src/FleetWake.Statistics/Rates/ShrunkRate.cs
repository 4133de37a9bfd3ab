namespace FleetWake.Statistics.Rates;

/// <summary>The rate of one unit, drawn towards the fleet as far as its own record is short.</summary>
/// <param name="Rate">Events per unit of exposure; the mean of what is believed of it, with its standard deviation.</param>
/// <param name="OwnShare">
/// How much of the rate is its own record, the rest being the fleet's [1]: 0 without exposure, near 1 after long.
/// </param>
public sealed record ShrunkRate(Estimate Rate, double OwnShare);
