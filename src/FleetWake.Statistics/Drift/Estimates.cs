namespace FleetWake.Statistics.Drift;

/// <summary>Estimates of this room: 80 % limits.</summary>
internal static class Estimates
{
    /// <summary>90 % point of the standard normal.</summary>
    public const double Z10 = 1.2815515655446004;

    public static Estimate Normal(double mean, double sd) => new(mean, sd, mean - (Z10 * sd), mean + (Z10 * sd), 0.8);

    /// <summary>Of weights on <see cref="SlopeGrid"/>.</summary>
    public static Estimate Drift(ReadOnlySpan<double> weights)
    {
        var mean = SlopeGrid.Mean(weights);
        // A posterior with one heavy end can have its mean outside the middle 80 %: the limits stay what they are called.
        return new(mean, Math.Sqrt(Variance(weights, mean)), SlopeGrid.Quantile(weights, 0.1), SlopeGrid.Quantile(weights, 0.9), 0.8);
    }

    public static double Variance(ReadOnlySpan<double> weights, double mean)
    {
        var variance = 1.0 / 12; // each weight is spread over a step
        for (var g = 0; g < weights.Length; g++) variance += weights[g] * (SlopeGrid.At(g) - mean) * (SlopeGrid.At(g) - mean);
        return variance;
    }

    /// <summary>sum of w ln(w / before) [nat]: how far weights have moved; 0 when not at all.</summary>
    public static double Divergence(ReadOnlySpan<double> weights, ReadOnlySpan<double> before)
    {
        var nats = 0.0;
        for (var g = 0; g < weights.Length; g++)
        {
            if (weights[g] > 0) nats += weights[g] * Math.Log(weights[g] / before[g]);
        }

        return Math.Max(0, nats);
    }
}
