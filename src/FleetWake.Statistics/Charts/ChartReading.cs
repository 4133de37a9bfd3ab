namespace FleetWake.Statistics.Charts;

/// <summary>One reading of a chart.</summary>
/// <param name="Value">The reading, in the caller's unit, within 1e100 of zero.</param>
/// <param name="Stretch">
/// Which baseline it belongs to. A strike or a repitch begins another one, and a chart begins anew there: the step is
/// known, and is no drift.
/// </param>
public readonly record struct ChartReading(double Value, int Stretch);
