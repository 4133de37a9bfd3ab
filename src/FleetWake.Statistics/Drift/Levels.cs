using System.Runtime.InteropServices;
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

    private readonly double[] _weight = new double[SlopeLikelihood.Length];
    private readonly double[] _first = new double[SlopeLikelihood.Length];
    private readonly double[] _second = new double[SlopeLikelihood.Length];

    public double Origin { get; } = origin;

    public ReadOnlySpan<double> Weight => _weight;

    /// <summary>Adds a component under the prior; returns its weight.</summary>
    public double Add(in Component c, ReadOnlySpan<double> curve, ReadOnlySpan<double> prior)
    {
        var f = MemoryMarshal.Cast<double, Vector256<double>>(curve);
        var p = MemoryMarshal.Cast<double, Vector256<double>>(prior);
        var weight = MemoryMarshal.Cast<double, Vector256<double>>(_weight.AsSpan());
        var first = MemoryMarshal.Cast<double, Vector256<double>>(_first.AsSpan());
        var second = MemoryMarshal.Cast<double, Vector256<double>>(_second.AsSpan());
        var slope = c.LevelPerSlope;
        var level = Vector256.Create(c.Level - Origin + (SlopeGrid.Lowest * slope)) + Vector256.Create(0, slope, 2 * slope, 3 * slope);
        var (step, variance, sum) = (Vector256.Create(4 * slope), Vector256.Create(c.LevelVariance), Vector256<double>.Zero);
        for (var i = 0; i < f.Length; i++)
        {
            var w = f[i] * p[i];
            sum += w;
            weight[i] += w;
            first[i] += w * level;
            second[i] += w * ((level * level) + variance);
            level += step;
        }

        return Vector256.Sum(sum);
    }

    /// <summary>Becomes a copy.</summary>
    public void Copy(Levels part)
    {
        part._weight.CopyTo(_weight, 0);
        part._first.CopyTo(_first, 0);
        part._second.CopyTo(_second, 0);
    }

    /// <summary>Takes a part away; where next to nothing is left, nothing is.</summary>
    public void Subtract(Levels part)
    {
        for (var g = 0; g < _weight.Length; g++)
        {
            var left = _weight[g] - part._weight[g];
            _weight[g] = left > 1e-6 * part._weight[g] ? left : 0;
            _first[g] -= part._first[g];
            _second[g] -= part._second[g];
        }
    }

    /// <summary>Mean above the origin and standard deviation at a place with weight.</summary>
    public (double Mean, double Sd) At(int place)
    {
        var mean = _first[place] / _weight[place];
        return (mean, Math.Sqrt(Math.Max(1e-12, (_second[place] / _weight[place]) - (mean * mean))));
    }

    /// <summary>
    /// Four places at once: their weights as shares of a total, mean and standard deviation [rpm]; false where none of them has
    /// a share that matters, and such a place among others gets the weight 0.
    /// </summary>
    public bool At(int vector, double total, out Vector256<double> weight, out Vector256<double> level, out Vector256<double> sd)
    {
        var own = Vector256.Create(_weight.AsSpan(4 * vector, 4));
        weight = own / Vector256.Create(total);
        (level, sd) = (Vector256<double>.Zero, Vector256<double>.One);
        var matters = Vector256.GreaterThanOrEqual(weight, Vector256.Create(Matters));
        if (matters == Vector256<double>.Zero) return false;
        weight = Vector256.ConditionalSelect(matters, weight, Vector256<double>.Zero);
        own = Vector256.ConditionalSelect(matters, own, Vector256<double>.One);
        var mean = Vector256.Create(_first.AsSpan(4 * vector, 4)) / own;
        var variance = (Vector256.Create(_second.AsSpan(4 * vector, 4)) / own) - (mean * mean);
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
            var gain = SlopeGrid.At(g) * hours / 100; // at a place (level + gain), and its square
            total += _weight[g];
            m += _first[g] + (_weight[g] * gain);
            square += _second[g] + (2 * gain * _first[g]) + (_weight[g] * gain * gain);
        }

        m /= total;
        return (Origin + m, Math.Sqrt(Math.Max(0, (square / total) - (m * m))));
    }
}
