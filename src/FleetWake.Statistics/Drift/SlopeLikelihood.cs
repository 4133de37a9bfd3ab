using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>Gaussian curves over the grid of drifts, padded to whole vectors.</summary>
internal static class SlopeLikelihood
{
    /// <summary>Length of a curve: the grid and a few places above it that nobody reads.</summary>
    public const int Length = 4 * Vectors;

    /// <summary>Vectors of four places.</summary>
    public const int Vectors = (SlopeGrid.Count + 3) / 4;

    /// <summary>Components this far below the best one, in natural logarithms, change no eighth digit.</summary>
    private const double Negligible = 27;

    private static readonly Vector256<double> Lane = Vector256.Create(0.0, 1, 2, 3);

    /// <summary>The highest value that any component takes on the grid.</summary>
    public static double Scale(ReadOnlySpan<Component> components, ReadOnlySpan<double> logWeights)
    {
        var scale = double.NegativeInfinity;
        for (var c = 0; c < components.Length; c++) scale = Math.Max(scale, Peak(components[c], logWeights[c]));
        return scale;
    }

    /// <summary>Fills <paramref name="likelihood"/> with the sum of all components, each divided by exp(scale).</summary>
    /// <returns>scale, the logarithm that all were divided by.</returns>
    public static double Sum(ReadOnlySpan<Component> components, ReadOnlySpan<double> logWeights, Span<double> likelihood)
    {
        var scale = Scale(components, logWeights);
        Span<Vector256<double>> sum = stackalloc Vector256<double>[Vectors];
        sum.Clear();
        for (var k = 0; k < components.Length; k++)
        {
            ref readonly var c = ref components[k];
            var log = logWeights[k] - scale;
            if (IsNegligible(c, log)) continue;
            if (!SlopeCurve.IsSteep(c)) Add(SlopeCurve.Of(c, log), sum);
            else for (var i = 0; i < Vectors; i++) Add(SlopeCurve.At(c, log, i), sum);
        }

        MemoryMarshal.Cast<Vector256<double>, double>(sum)[..SlopeGrid.Count].CopyTo(likelihood);
        return scale;
    }

    /// <summary>A component that lies so far below the best one that it changes nothing.</summary>
    /// <param name="c">The component.</param>
    /// <param name="log">Its weight against the best one's peak, as a logarithm.</param>
    public static bool IsNegligible(in Component c, double log) => !(Peak(c, log) > -Negligible);

    private static void Add(in SlopeCurve curve, Span<Vector256<double>> sum)
    {
        var (f, factor, shrink) = (curve.Value, curve.Up, curve.Shrink);
        for (var i = curve.Start; i < sum.Length; i++)
        {
            sum[i] += f;
            f *= factor;
            factor *= shrink;
        }

        (f, factor) = (curve.Value * curve.Down, curve.Down * shrink);
        for (var i = curve.Start - 1; i >= 0; i--)
        {
            sum[i] += f;
            f *= factor;
            factor *= shrink;
        }
    }

    private static double Peak(in Component c, double logWeight)
    {
        var s = Nearest(c);
        return logWeight + (s * (c.Xu - (0.5 * c.Xx * s)));
    }

    /// <summary>The drifts of a vector's four places.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)] // a call puts all vectors of the loops around it on the stack
    public static Vector256<double> Place(int vector) => Vector256.Create((double)(SlopeGrid.Lowest + (4 * vector))) + Lane;

    /// <summary>The place of the grid [rpm per 100 h] nearest to a component's peak.</summary>
    public static int Nearest(in Component c) =>
        c.Xx > 0 ? (int)Math.Round(Math.Clamp(c.Xu / c.Xx, SlopeGrid.Lowest, SlopeGrid.Highest)) : 0;
}

/// <summary>Sums over drifts s of w, w s and w s^2.</summary>
internal readonly record struct DriftSums(double Weight, double First, double Second)
{
    public static DriftSums operator +(DriftSums a, DriftSums b) => new(a.Weight + b.Weight, a.First + b.First, a.Second + b.Second);
}
