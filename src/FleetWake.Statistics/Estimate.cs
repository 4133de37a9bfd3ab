namespace FleetWake.Statistics;

/// <summary>A value with its doubt, in whatever unit its owner names.</summary>
/// <param name="Value">The value.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="Low">Lower end of its interval.</param>
/// <param name="High">Upper end.</param>
/// <param name="Level">Level of the interval, e.g. 0.8.</param>
public sealed record Estimate(double Value, double StandardError, double Low, double High, double Level);
