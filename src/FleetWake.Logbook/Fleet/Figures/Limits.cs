using FleetWake.Statistics;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>A number with its limits, in the unit that the name of the property says. The level stands beside the figures it belongs to.</summary>
/// <param name="Value">The best single value.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit; null when the record sets none.</param>
public sealed record Limits(double Value, double Low, double? High)
{
    /// <summary>Level of every interval of the fleet's figures [1]: it holds the truth eight times in ten.</summary>
    public const double Level = 0.8;

    /// <summary>An estimate as numbers that can be written down; null when it is none.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="unit">What one of the new unit is in the estimate's.</param>
    internal static Limits? Of(Estimate? estimate, double unit = 1) =>
        estimate is null || !double.IsFinite(estimate.Value) || double.IsNaN(estimate.Low) || double.IsNaN(estimate.High)
            ? null
            : new Limits(
                estimate.Value / unit,
                Math.Max(estimate.Low, 0) / unit,
                double.IsFinite(estimate.High / unit) ? estimate.High / unit : null);
}
