using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// The chance that a level has crossed an end of the band, by hours after the last trial: a sum over sets of gross errors and
/// drifts of w Phi(margin + hours perHour). A level that moves away from an end has crossed it by the last trial or never.
/// </summary>
internal sealed class CrossingChance
{
    /// <summary>Vectors of drifts below zero; the grid's zero begins a vector.</summary>
    private const int Falling = SlopeGrid.Zero / 4;

    private readonly Vector256<double>[] _terms; // weight, margin, what an hour adds, and so on
    private int _used;
    private Vector256<double> _still;

    private CrossingChance(int vectors) => _terms = new Vector256<double>[3 * vectors];

    /// <summary>Over the upper end of a band and under its lower one.</summary>
    public static (CrossingChance Above, CrossingChance Below) Of(Marginals marginals, double bottomRpm, double topRpm)
    {
        var above = new CrossingChance(marginals.BySet.Count * (SlopeLikelihood.Vectors - Falling));
        var below = new CrossingChance(marginals.BySet.Count * Falling);
        var (top, bottom) = (Vector256.Create(topRpm), Vector256.Create(bottomRpm));
        foreach (var levels in marginals.BySet)
        {
            for (var i = 0; i < SlopeLikelihood.Vectors; i++)
            {
                if (!levels.At(i, marginals.Total, out var weight, out var level, out var sd)) continue;
                var perHour = SlopeLikelihood.Place(i) / Vector256.Create(100.0) / sd;
                var (over, under) = ((level - top) / sd, (bottom - level) / sd);
                if (i < Falling)
                {
                    above.Add(weight, over);
                    below.Add(weight, under, -perHour);
                }
                else
                {
                    above.Add(weight, over, perHour);
                    below.Add(weight, under);
                }
            }
        }

        return (above, below);
    }

    /// <summary>The chance by so many hours [1], 0 to 1.</summary>
    public double At(double hours)
    {
        var (x, sum) = (Vector256.Create(hours), _still);
        for (var i = 0; i < _used; i += 3) sum += _terms[i] * Normal.Cdf(_terms[i + 1] + (_terms[i + 2] * x));
        return Math.Clamp(Vector256.Sum(sum), 0, 1);
    }

    private void Add(Vector256<double> weight, Vector256<double> margin) => _still += weight * Normal.Cdf(margin);

    private void Add(Vector256<double> weight, Vector256<double> margin, Vector256<double> perHour)
    {
        (_terms[_used], _terms[_used + 1], _terms[_used + 2]) = (weight, margin, perHour);
        _used += 3;
    }
}
