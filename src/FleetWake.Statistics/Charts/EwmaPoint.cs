namespace FleetWake.Statistics.Charts;

/// <summary>An EWMA after one reading, in the unit of the readings.</summary>
/// <param name="Value">The weighted mean of this and all earlier readings.</param>
/// <param name="Low">Lower control limit.</param>
/// <param name="High">Upper control limit.</param>
public readonly record struct EwmaPoint(double Value, double Low, double High)
{
    /// <summary>Whether the mean lies outside its limits.</summary>
    public bool Signals => Value < Low || Value > High;
}
