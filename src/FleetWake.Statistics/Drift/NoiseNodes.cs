namespace FleetWake.Statistics.Drift;

/// <summary>
/// What is held possible about the noise of a mounting's trials: a few standard deviations, each a share of the RPM, with
/// a weight each.
/// </summary>
/// <remarks>Immutable. The weights sum to 1.</remarks>
public sealed class NoiseNodes
{
    /// <summary>The least noise that a fleet is believed to have, as a share of the RPM [1].</summary>
    public const double LeastShare = 0.0035;

    // Gauss-Hermite, five nodes, for a standard normal (Abramowitz and Stegun 1964, table 25.10, nodes times sqrt 2).
    private static readonly double[] HermiteNode = [-2.8569700138728056, -1.355626179974266, 0, 1.355626179974266, 2.8569700138728056];
    private static readonly double[] HermiteWeight = [0.011257411327720677, 0.22207592200561257, 0.5333333333333335, 0.22207592200561257, 0.011257411327720677];

    private readonly double[] _share;
    private readonly double[] _weight;

    private NoiseNodes(double[] share, double[] weight) => (_share, _weight) = (share, weight);

    /// <summary>The standard deviations as shares of the RPM [1], rising.</summary>
    public ReadOnlySpan<double> Shares => _share;

    /// <summary>Their weights, in the same order.</summary>
    public ReadOnlySpan<double> Weights => _weight;

    /// <summary>A log-normal belief about the noise in five nodes.</summary>
    /// <param name="medianShare">Its median as a share of the RPM [1], above 0 and below 1.</param>
    /// <param name="logSd">Standard deviation of its natural logarithm [1], zero or more, at most 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges.</exception>
    public static NoiseNodes LogNormal(double medianShare, double logSd)
    {
        if (!(medianShare > 0 && medianShare < 1)) throw new ArgumentOutOfRangeException(nameof(medianShare), medianShare, "Must lie between 0 and 1.");
        if (!(logSd >= 0 && logSd <= 2)) throw new ArgumentOutOfRangeException(nameof(logSd), logSd, "Must lie from 0 to 2.");

        return new(Array.ConvertAll(HermiteNode, z => medianShare * Math.Exp(logSd * z)), [.. HermiteWeight]);
    }

    /// <summary>A belief given as it is.</summary>
    /// <param name="shares">Standard deviations as shares of the RPM [1], above 0 and below 1.</param>
    /// <param name="weights">As many weights, zero or more and not all zero; they are brought to the sum 1.</param>
    /// <exception cref="ArgumentException">The lengths differ, none is given, or the weights sum to nothing.</exception>
    public static NoiseNodes Of(ReadOnlySpan<double> shares, ReadOnlySpan<double> weights)
    {
        if (shares.Length == 0 || shares.Length != weights.Length) throw new ArgumentException("As many weights as shares, and at least one.", nameof(weights));
        var sum = 0.0;
        for (var j = 0; j < shares.Length; j++)
        {
            if (!(shares[j] > 0 && shares[j] < 1)) throw new ArgumentException($"A share of {shares[j]} is not between 0 and 1.", nameof(shares));
            if (!(weights[j] >= 0)) throw new ArgumentException($"A weight of {weights[j]} is not zero or more.", nameof(weights));
            sum += weights[j];
        }

        if (!(sum > 0) || !double.IsFinite(sum)) throw new ArgumentException($"The weights sum to {sum}.", nameof(weights));
        var w = weights.ToArray();
        for (var j = 0; j < w.Length; j++) w[j] /= sum;
        return new(shares.ToArray(), w);
    }
}
