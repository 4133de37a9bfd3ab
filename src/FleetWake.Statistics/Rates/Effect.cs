namespace FleetWake.Statistics.Rates;

/// <summary>What was found in one place, with its own doubt.</summary>
/// <param name="Value">The effect, such as what one strike cost [rpm], in a unit that all have in common; within 1e12
/// of zero.</param>
/// <param name="StandardError">Its standard error in the same unit, 1e-9 to 1e9.</param>
public readonly record struct Effect(double Value, double StandardError);
