namespace FleetWake.Statistics;

/// <summary>One reading for a line; units are the caller's.</summary>
/// <param name="X">Where it was read, such as engine hours; finite.</param>
/// <param name="Y">What was read, such as rpm; finite.</param>
/// <param name="Stretch">
/// The stretch it belongs to: a span with a level of its own (a new baseline) that shares the slope of the others. Any
/// numbers, not necessarily next to each other; the greatest is the last stretch.
/// </param>
public readonly record struct LinePoint(double X, double Y, int Stretch);
