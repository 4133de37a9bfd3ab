using MathNet.Numerics;

namespace FleetWake.Statistics.Drift;

/// <summary>What is held possible about a drift before its mounting's own trials: a weight for each place of the grid.</summary>
/// <remarks>Immutable. The weights sum to 1.</remarks>
public sealed class SlopePrior
{
    /// <summary>No drift of the grid is impossible: overwhelming trials may still say so.</summary>
    private const double Floor = 1e-15;

    private readonly double[] _weights;

    private SlopePrior(double[] weights) => _weights = weights;

    /// <summary>The weights on <see cref="SlopeGrid"/>.</summary>
    public ReadOnlySpan<double> Weights => _weights;

    /// <summary>
    /// Some props do not wear, the others by a gamma distribution: p0 N(0, sd^2) + (1 - p0) Gamma(shape, mean).
    /// </summary>
    /// <param name="sound">Share p0 of props that do not wear [1], 0 to 1.</param>
    /// <param name="shape">Shape of the gamma distribution [1], above 0.</param>
    /// <param name="mean">Its mean [rpm per 100 h], above 0.</param>
    /// <param name="soundSd">Standard deviation of the drift of those that do not wear [rpm per 100 h], above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges.</exception>
    public static SlopePrior SoundOrWearing(double sound, double shape, double mean, double soundSd = 1.5)
    {
        if (!(sound >= 0 && sound <= 1)) throw new ArgumentOutOfRangeException(nameof(sound), sound, "Must lie from 0 to 1.");
        if (!(shape > 0 && shape <= 1000)) throw new ArgumentOutOfRangeException(nameof(shape), shape, "Must lie above 0, at most 1000.");
        if (!(mean > 0 && mean <= 1000)) throw new ArgumentOutOfRangeException(nameof(mean), mean, "Must lie above 0, at most 1000.");
        if (!(soundSd > 0 && soundSd <= 100)) throw new ArgumentOutOfRangeException(nameof(soundSd), soundSd, "Must lie above 0, at most 100.");

        var weights = new double[SlopeGrid.Count];
        Span<double> wearing = stackalloc double[SlopeGrid.Count];
        Sound(weights, soundSd);
        Wearing(wearing, shape, mean);
        for (var g = 0; g < weights.Length; g++) weights[g] = (sound * weights[g]) + ((1 - sound) * wearing[g]) + Floor;
        SlopeGrid.Normalise(weights);
        return new(weights);
    }

    /// <summary>Weights given as they are.</summary>
    /// <param name="weights">One for each place of the grid, zero or more, not all zero; brought to the sum 1.</param>
    /// <exception cref="ArgumentException">Another count, a negative weight, or nothing in all.</exception>
    public static SlopePrior Of(ReadOnlySpan<double> weights)
    {
        if (weights.Length != SlopeGrid.Count) throw new ArgumentException($"{weights.Length} weights where the grid has {SlopeGrid.Count} places.", nameof(weights));
        var sum = 0.0;
        foreach (var w in weights)
        {
            if (!(w >= 0)) throw new ArgumentException($"A weight of {w} is not zero or more.", nameof(weights));
            sum += w;
        }

        if (!(sum > 0) || !double.IsFinite(sum)) throw new ArgumentException($"The weights sum to {sum}.", nameof(weights));
        var own = weights.ToArray();
        SlopeGrid.Normalise(own);
        return new(own);
    }

    internal static void Sound(Span<double> weights, double sd)
    {
        for (var g = 0; g < weights.Length; g++)
        {
            var z = SlopeGrid.At(g) / sd;
            weights[g] = Math.Exp(-0.5 * z * z);
        }

        SlopeGrid.Normalise(weights);
    }

    /// <summary>The chance that a gamma variate falls within half a step of each place, brought to the sum 1.</summary>
    internal static void Wearing(Span<double> weights, double shape, double mean)
    {
        var rate = shape / mean;
        var below = 0.0;
        for (var g = 0; g < weights.Length; g++)
        {
            var edge = SlopeGrid.At(g) + 0.5;
            var upTo = edge > 0 ? SpecialFunctions.GammaLowerRegularized(shape, rate * edge) : 0;
            weights[g] = Math.Max(0, upTo - below);
            below = upTo;
        }

        SlopeGrid.Normalise(weights);
    }
}
