using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// The level at the last trial for each drift, as weight and first two moments, summed over components that belong
/// together: about <see cref="Origin"/>, so that the moments keep their digits.
/// </summary>
internal sealed class Levels(double origin)
{
    /// <summary>Places with less than this share of the weight change no chance that is shown.</summary>
    private const double Matters = 1e-7;

    private readonly Four[] _sums = new Four[SlopeLikelihood.Vectors];

    public double Origin { get; } = origin;

    /// <summary>Adds a component under the prior; returns its weight and drift.</summary>
    /// <param name="c">The component.</param>
    /// <param name="logWeight">Its weight, as a logarithm.</param>
    /// <param name="prior">The prior's weights, nothing above the grid.</param>
    public DriftSums Add(in Component c, double logWeight, ReadOnlySpan<Vector256<double>> prior)
    {
        if (!SlopeCurve.IsSteep(c)) return Add(c, SlopeCurve.Of(c, logWeight), prior);
        var sums = default(DriftSums);
        for (var i = 0; i < SlopeLikelihood.Vectors; i++) sums += Add(c, SlopeCurve.At(c, logWeight, i), prior);
        return sums;
    }

    /// <summary>Becomes a copy.</summary>
    public void Copy(Levels part) => part._sums.CopyTo(_sums, 0);

    /// <summary>Takes a part away; where next to nothing is left, nothing is.</summary>
    public void Subtract(Levels part)
    {
        for (var i = 0; i < _sums.Length; i++)
        {
            ref var own = ref _sums[i];
            ref readonly var other = ref part._sums[i];
            var left = own.Weight - other.Weight;
            var some = Vector256.GreaterThan(left, Vector256.Create(1e-6) * other.Weight);
            own = new(Vector256.ConditionalSelect(some, left, Vector256<double>.Zero), own.First - other.First, own.Second - other.Second);
        }
    }

    /// <summary>Writes the weight of each drift.</summary>
    public void Weights(Span<double> weights)
    {
        for (var g = 0; g < weights.Length; g++) weights[g] = _sums[g / 4].Weight[g % 4];
    }

    /// <summary>Mean above the origin and standard deviation at a place with weight.</summary>
    public (double Mean, double Sd) At(int place)
    {
        var (weight, first, second) = Place(place);
        var mean = first / weight;
        return (mean, Math.Sqrt(Math.Max(1e-12, (second / weight) - (mean * mean))));
    }

    /// <summary>
    /// Four places at once: their weights as shares of a total, mean and standard deviation [rpm]; false where none of them has
    /// a share that matters, and such a place among others gets the weight 0.
    /// </summary>
    public bool At(int vector, double total, out Vector256<double> weight, out Vector256<double> level, out Vector256<double> sd)
    {
        ref readonly var sums = ref _sums[vector];
        weight = sums.Weight / Vector256.Create(total);
        (level, sd) = (Vector256<double>.Zero, Vector256<double>.One);
        var matters = Vector256.GreaterThanOrEqual(weight, Vector256.Create(Matters));
        if (matters == Vector256<double>.Zero) return false;
        weight = Vector256.ConditionalSelect(matters, weight, Vector256<double>.Zero);
        var own = Vector256.ConditionalSelect(matters, sums.Weight, Vector256<double>.One);
        var mean = sums.First / own;
        var variance = (sums.Second / own) - (mean * mean);
        level = Vector256.ConditionalSelect(matters, Vector256.Create(Origin) + mean, level);
        sd = Vector256.ConditionalSelect(matters, Vector256.Sqrt(Vector256.Max(Vector256.Create(1e-12), variance)), sd);
        return true;
    }

    /// <summary>Mean and standard deviation so many hours after the last trial, over all drifts [rpm].</summary>
    public (double Mean, double Sd) Whole(double hours = 0)
    {
        double total = 0, m = 0, square = 0;
        for (var g = 0; g < SlopeGrid.Count; g++)
        {
            var (weight, first, second) = Place(g);
            var gain = SlopeGrid.At(g) * hours / 100; // at a place (level + gain), and its square
            total += weight;
            m += first + (weight * gain);
            square += second + (2 * gain * first) + (weight * gain * gain);
        }

        m /= total;
        return (Origin + m, Math.Sqrt(Math.Max(0, (square / total) - (m * m))));
    }

    private (double Weight, double First, double Second) Place(int g)
    {
        ref readonly var four = ref _sums[g / 4];
        return (four.Weight[g % 4], four.First[g % 4], four.Second[g % 4]);
    }

    private DriftSums Add(in Component c, in SlopeCurve curve, ReadOnlySpan<Vector256<double>> prior)
    {
        var sums = _sums.AsSpan(0, prior.Length);
        var (level, perSlope, variance) = (Vector256.Create(c.Level - Origin), Vector256.Create(c.LevelPerSlope), Vector256.Create(c.LevelVariance));
        Vector256<double> weight = default, first = default, second = default;
        var (f, factor, shrink) = (curve.Value, curve.Up, curve.Shrink);
        var (at, step) = (curve.Start, 1);
        do
        {
            var (s, apart) = (SlopeLikelihood.Place(at), Vector256.Create(4.0 * step));
            for (var i = at; (uint)i < (uint)sums.Length; i += step)
            {
                ref var sum = ref sums[i];
                var w = f * prior[i];
                var ws = w * s;
                var there = Vector256.FusedMultiplyAdd(perSlope, s, level);
                sum.Weight += w;
                sum.First = Vector256.FusedMultiplyAdd(w, there, sum.First);
                sum.Second = Vector256.FusedMultiplyAdd(w, Vector256.FusedMultiplyAdd(there, there, variance), sum.Second);
                weight += w;
                first += ws;
                second = Vector256.FusedMultiplyAdd(ws, s, second);
                f *= factor;
                factor *= shrink;
                s += apart;
            }

            (at, step, f, factor) = (curve.Start - 1, -step, curve.Value * curve.Down, curve.Down * shrink); // then down
        }
        while (step < 0);

        return new(Vector256.Sum(weight), Vector256.Sum(first), Vector256.Sum(second));
    }

    /// <summary>Sums over components of weight, weight times level above the origin, and weight times its square.</summary>
    private record struct Four(Vector256<double> Weight, Vector256<double> First, Vector256<double> Second);
}
