namespace FleetWake.Statistics;

/// <summary>
/// A value that was inferred, with its doubt. The units of the value, its standard error and its limits are one and the
/// same and belong to whoever made it: say them in the name of the property that holds an estimate.
/// </summary>
/// <param name="Value">The best single value.</param>
/// <param name="StandardError">Its standard error, zero or more; zero only when the doubt is truly none.</param>
/// <param name="Low">Lower limit of the two-sided interval, at most <paramref name="Value"/>.</param>
/// <param name="High">Upper limit of the two-sided interval, at least <paramref name="Value"/>.</param>
/// <param name="Level">
/// The share of such intervals that hold the truth, 0 to 1 exclusive, such as 0.8; half of the rest lies on each side.
/// </param>
/// <remarks>A plain carrier: it checks nothing, so that it can be read back from wherever it was written.</remarks>
public sealed record Estimate(double Value, double StandardError, double Low, double High, double Level);
