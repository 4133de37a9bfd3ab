using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// The level at the last trial for each drift, as weight and first two moments, summed over components that belong
/// together: about <see cref="Origin"/>, so that the moments keep their digits.
/// </summary>
internal sealed class Levels(double origin)
{
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

    /// <summary>Mean and standard deviation over all drifts [rpm].</summary>
    public (double Mean, double Sd) Whole()
    {
        double total = 0, m = 0, square = 0;
        for (var g = 0; g < SlopeGrid.Count; g++)
        {
            total += _weight[g];
            m += _first[g];
            square += _second[g];
        }

        m /= total;
        return (Origin + m, Math.Sqrt(Math.Max(0, (square / total) - (m * m))));
    }
}
