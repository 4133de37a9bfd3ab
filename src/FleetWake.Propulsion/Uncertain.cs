namespace FleetWake.Propulsion;

/// <summary>A number that was inferred, with its doubt. The unit stands in the name of whatever holds it.</summary>
/// <param name="Value">The number.</param>
/// <param name="StandardDeviation">One standard deviation of it, in the same unit, zero or more.</param>
public readonly record struct Uncertain(double Value, double StandardDeviation)
{
    /// <summary>The lower end of an interval of some standard deviations.</summary>
    /// <param name="deviations">How many.</param>
    public double Low(double deviations) => Value - (deviations * StandardDeviation);

    /// <summary>The upper end of an interval of some standard deviations.</summary>
    /// <param name="deviations">How many.</param>
    public double High(double deviations) => Value + (deviations * StandardDeviation);
}
