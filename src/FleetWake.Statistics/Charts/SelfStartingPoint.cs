namespace FleetWake.Statistics.Charts;

/// <summary>A self-starting CUSUM after one reading.</summary>
/// <param name="T">
/// The reading against all earlier ones of its stretch, Student's t of n - 2 [1]; null for the first two of a stretch,
/// or when the earlier ones have no scatter at all.
/// </param>
/// <param name="Score">
/// The normal score of T [1], clipped; null for the first two of a stretch. While nothing changes, scores are independent
/// and standard normal.
/// </param>
/// <param name="Sums">The sums of scores, in standard deviations; nothing at the first two of a stretch.</param>
public readonly record struct SelfStartingPoint(double? T, double? Score, CusumSides Sums);
