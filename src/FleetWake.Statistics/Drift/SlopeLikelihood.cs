using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>Gaussian curves over the grid of drifts, padded to whole vectors.</summary>
internal static class SlopeLikelihood
{
    /// <summary>Length of a curve: the grid and a few places above it that nobody reads.</summary>
    public const int Length = (SlopeGrid.Count + 3) & ~3;

    /// <summary>Components this far below the best one, in natural logarithms, change no eighth digit.</summary>
    private const double Negligible = 27;

    /// <summary>The steepest curve, in precision, whose neighbours are told by factors; a steeper one would overflow them.</summary>
    private const double Steep = 2;

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
        Span<double> sum = stackalloc double[Length];
        Span<double> curve = stackalloc double[Length];
        sum.Clear();
        var total = MemoryMarshal.Cast<double, Vector256<double>>(sum);
        var one = MemoryMarshal.Cast<double, Vector256<double>>(curve);
        for (var c = 0; c < components.Length; c++)
        {
            if (!Fill(components[c], logWeights[c] - scale, curve)) continue;
            for (var i = 0; i < one.Length; i++) total[i] += one[i];
        }

        sum[..SlopeGrid.Count].CopyTo(likelihood);
        return scale;
    }

    /// <summary>Fills a curve with exp(logWeight + s Xu - s^2 Xx / 2) for every drift s.</summary>
    /// <returns>False, and nothing filled, when it is negligible throughout.</returns>
    /// <remarks>
    /// Outward from the peak, places four apart differ by a factor that itself shrinks by exp(-16 Xx): two multiplications
    /// for four places where exponentials would cost forty.
    /// </remarks>
    public static bool Fill(in Component c, double logWeight, Span<double> curve)
    {
        var peak = Nearest(c);
        if (!(logWeight + (peak * (c.Xu - (0.5 * c.Xx * peak))) > -Negligible)) return false;
        var v = MemoryMarshal.Cast<double, Vector256<double>>(curve);
        if (c.Xx > Steep)
        {
            for (var i = 0; i < v.Length; i++) v[i] = Direct(c, logWeight, i);
            return true;
        }

        var start = (peak - SlopeGrid.Lowest) / 4;
        var s = Place(start);
        var value = v[start] = Direct(c, logWeight, start);
        var shrink = Vector256.Create(Math.Exp(-16 * c.Xx));
        var up = Vector256.Exp(Vector256.Create((4 * c.Xu) - (8 * c.Xx)) - (Vector256.Create(4 * c.Xx) * s));
        var down = Vector256.Exp(Vector256.Create((-4 * c.Xu) - (8 * c.Xx)) + (Vector256.Create(4 * c.Xx) * s));
        var f = value;
        for (var i = start + 1; i < v.Length; i++)
        {
            v[i] = f *= up;
            up *= shrink;
        }

        f = value;
        for (var i = start - 1; i >= 0; i--)
        {
            v[i] = f *= down;
            down *= shrink;
        }

        return true;
    }

    /// <summary>Weight of a curve under a prior, with sums of s and of s^2.</summary>
    public static DriftSums Sums(ReadOnlySpan<double> curve, ReadOnlySpan<double> prior)
    {
        var f = MemoryMarshal.Cast<double, Vector256<double>>(curve);
        var p = MemoryMarshal.Cast<double, Vector256<double>>(prior);
        Vector256<double> weight = default, first = default, second = default;
        for (var i = 0; i < f.Length; i++)
        {
            var (w, s) = (f[i] * p[i], Place(i));
            weight += w;
            first += w * s;
            second += w * s * s;
        }

        return new(Vector256.Sum(weight), Vector256.Sum(first), Vector256.Sum(second));
    }

    private static double Peak(in Component c, double logWeight)
    {
        var s = Nearest(c);
        return logWeight + (s * (c.Xu - (0.5 * c.Xx * s)));
    }

    /// <summary>The drifts of a vector's four places.</summary>
    public static Vector256<double> Place(int vector) => Vector256.Create((double)(SlopeGrid.Lowest + (4 * vector))) + Lane;

    private static Vector256<double> Direct(in Component c, double logWeight, int vector)
    {
        var s = Place(vector);
        return Vector256.Exp(Vector256.Create(logWeight) + (s * (Vector256.Create(c.Xu) - (Vector256.Create(0.5 * c.Xx) * s))));
    }

    private static int Nearest(in Component c) =>
        c.Xx > 0 ? (int)Math.Round(Math.Clamp(c.Xu / c.Xx, SlopeGrid.Lowest, SlopeGrid.Highest)) : 0;
}

/// <summary>Sums over drifts s of w, w s and w s^2.</summary>
internal readonly record struct DriftSums(double Weight, double First, double Second);
