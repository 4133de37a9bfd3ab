namespace FleetWake.Statistics.Life;

/// <summary>What a log-rank test found.</summary>
/// <param name="ChiSquared">The statistic [1], zero or more; large when the groups do not last alike.</param>
/// <param name="DegreesOfFreedom">Groups that could be compared, less one.</param>
/// <param name="Probability">
/// How often groups that last alike would differ this much [1], by the chi-square distribution; with fewer than about
/// five ends expected in a group it is rough (common practice, no source).
/// </param>
/// <param name="Observed">Ends in each group.</param>
/// <param name="Expected">Ends in each group if all lasted alike; adds up to the same number.</param>
public sealed record LogRankTest(
    double ChiSquared,
    int DegreesOfFreedom,
    double Probability,
    IReadOnlyList<double> Observed,
    IReadOnlyList<double> Expected);
