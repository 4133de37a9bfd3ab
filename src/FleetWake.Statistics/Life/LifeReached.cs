namespace FleetWake.Statistics.Life;

/// <summary>The age at which a share still going is reached, with its limits.</summary>
/// <param name="Hours">The age [h]; null when the curve never came down that far.</param>
/// <param name="LowHours">Lower limit [h]; null when not even the lower limit of the curve came down that far.</param>
/// <param name="HighHours">Upper limit [h]; null says "later than anyone was followed", not "unknown".</param>
public sealed record LifeReached(double? Hours, double? LowHours, double? HighHours);
