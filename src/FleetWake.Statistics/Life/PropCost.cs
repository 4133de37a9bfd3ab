namespace FleetWake.Statistics.Life;

/// <summary>What one prop has cost, and for how long it served.</summary>
/// <param name="Cost">
/// Everything it cost [the caller's currency], 0 to 1e12: its price, repairs, and what its strikes did to the
/// lower unit.
/// </param>
/// <param name="Hours">Engine hours it served [h], 0 to 1e12.</param>
/// <remarks>
/// A prop still in use has not used up its price yet. Charging all of it makes a young fleet look dear; charge the share
/// used, price times the lesser of 1 and hours over expected life, and say so beside the figure.
/// </remarks>
public readonly record struct PropCost(double Cost, double Hours);
