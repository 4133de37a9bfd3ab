namespace FleetWake.Statistics.Scores;

/// <summary>How good stated chances were, less is better: Brier, Monthly Weather Review 78 (1950) 1-3, in the form with one class, from 0 to 1.</summary>
public static class BrierScore
{
    /// <summary>The mean of (chance - outcome)^2, the outcome 1 where it happened and 0 where it did not.</summary>
    /// <param name="told">Each chance [1] with whether it happened.</param>
    /// <returns>The score [1]; null of none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A chance is none.</exception>
    public static double? Of(IReadOnlyCollection<(double Chance, bool Happened)> told)
    {
        ArgumentNullException.ThrowIfNull(told);
        foreach (var (chance, _) in told)
            if (!(chance is >= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(told), chance, "A chance lies from 0 to 1.");
        return told.Count == 0 ? null : told.Average(t => Math.Pow(t.Chance - (t.Happened ? 1 : 0), 2));
    }
}
