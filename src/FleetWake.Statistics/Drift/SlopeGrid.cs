namespace FleetWake.Statistics.Drift;

/// <summary>
/// The drifts that are weighed against each other: -20 to 80 rpm per 100 engine hours in steps of 1. A prop that wears out
/// within a season drifts by 60; one that gains grip does not exist, but hull growth lowers the RPM a little.
/// </summary>
public static class SlopeGrid
{
    /// <summary>Lowest drift [rpm per 100 h].</summary>
    public const int Lowest = -20;

    /// <summary>Highest drift [rpm per 100 h].</summary>
    public const int Highest = 80;

    /// <summary>How many drifts.</summary>
    public const int Count = Highest - Lowest + 1;

    /// <summary>The place of no drift.</summary>
    internal const int Zero = -Lowest;

    /// <summary>The drift at a place, 0 to <see cref="Count"/> - 1 [rpm per 100 h].</summary>
    public static double At(int place) => Lowest + place;

    /// <summary>
    /// The drift below which a share of the weight lies, each weight spread evenly over half a step to both sides.
    /// </summary>
    /// <param name="weights">One weight for each drift, zero or more, summing to 1.</param>
    /// <param name="share">The share [1], 0 to 1.</param>
    public static double Quantile(ReadOnlySpan<double> weights, double share)
    {
        var below = 0.0;
        for (var g = 0; g < Count; g++)
        {
            if (below + weights[g] >= share && weights[g] > 0)
                return At(g) - 0.5 + Math.Max(0, (share - below) / weights[g]);
            below += weights[g];
        }

        return Highest + 0.5;
    }

    /// <summary>The mean of the weighted drifts.</summary>
    public static double Mean(ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        for (var g = 0; g < Count; g++) sum += weights[g] * At(g);
        return sum;
    }

    internal static void Normalise(Span<double> weights)
    {
        var sum = 0.0;
        foreach (var w in weights) sum += w;
        for (var g = 0; g < weights.Length; g++) weights[g] /= sum;
    }
}
