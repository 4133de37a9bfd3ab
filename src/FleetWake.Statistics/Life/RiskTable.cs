namespace FleetWake.Statistics.Life;

/// <summary>How many were followed, and how many ended, at each age at which one ended.</summary>
internal static class RiskTable
{
    /// <summary>Ages in rising order. Followed at an age: entered before it, and last seen or ended at it or later.</summary>
    internal static IEnumerable<(double Hours, int AtRisk, int Ended)> Of(IReadOnlyCollection<Lifetime> lives)
    {
        var entries = lives.Select(life => life.FromHours).Order().ToArray();
        var exits = lives.Select(life => life.Hours).Order().ToArray();
        var entered = 0;
        var left = 0;
        foreach (var ends in lives.Where(life => life.HasEnded).GroupBy(life => life.Hours).OrderBy(ends => ends.Key))
        {
            while (entered < entries.Length && entries[entered] < ends.Key)
                entered++;
            while (left < exits.Length && exits[left] < ends.Key)
                left++;
            yield return (ends.Key, entered - left, ends.Count());
        }
    }
}
