using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace FleetWake.Statistics.Charts;

/// <summary>
/// A chart's state as points of Gauss's rule within its limits, and for a CUSUM the zero as a point of its own, in which
/// the sum really stays. From state s a reading leads to y with density f(y | s); sums over the points stand for the
/// integrals, to nearly all digits since f is smooth.
/// </summary>
internal sealed class RunChain
{
    private const double Endless = 1e12; // readings
    private const int MostDrifting = 100_000; // readings until a drift is surely found

    private readonly double[] _states;
    private readonly double[] _weights; // 0 for the zero of a CUSUM
    private readonly Func<double, double, double> _noise; // the reading that leads from s to y [sd]
    private readonly double _density; // dx/dy of the reading
    private readonly bool _hasZero;

    private RunChain(double low, double high, double width, bool hasZero, Func<double, double, double> noise)
    {
        // Four points to each standard deviation of a step, and never few.
        var order = Math.Clamp((int)(4 * (high - low) / width) + 16, 32, 640);
        var rule = new GaussLegendreRule(low, high, order);
        _states = hasZero ? [0, .. rule.Abscissas] : rule.Abscissas;
        _weights = hasZero ? [0, .. rule.Weights] : rule.Weights;
        _density = 1 / width;
        _noise = noise;
        _hasZero = hasZero;
    }

    /// <summary>The upper sum of a CUSUM: y = s + x - k, and everything below zero is zero.</summary>
    internal static RunChain Cusum(double k, double h) => new(0, h, 1, true, (s, y) => y - s + k);

    /// <summary>An EWMA: y = (1 - lambda) s + lambda x, within plus and minus L sqrt(lambda / (2 - lambda)).</summary>
    internal static RunChain Ewma(double lambda, double width)
    {
        var limit = width * Math.Sqrt(lambda / (2 - lambda));
        return new RunChain(-limit, limit, lambda, false, (s, y) => (y - ((1 - lambda) * s)) / lambda);
    }

    /// <summary>L(s) = 1 + sum over y of P(s to y) L(y), solved for the L of all states, then read at the start.</summary>
    internal double Stationary(double shift, double start)
    {
        var n = _states.Length;
        var rest = Matrix<double>.Build.Dense(n, n, (i, j) => (i == j ? 1 : 0) - Step(_states[i], j, shift));
        var L = rest.Solve(Vector<double>.Build.Dense(n, 1.0));
        var length = 1.0;
        for (var j = 0; j < n; j++)
            length += Step(start, j, shift) * L[j];
        return length >= 1 && length < Endless ? length : double.PositiveInfinity;
    }

    /// <summary>The sum over i of the probability that no reading up to i signalled.</summary>
    internal double Drifting(double shift, double drift, double start)
    {
        var n = _states.Length;
        var at = new double[n]; // probability at each state, weights included
        var next = new double[n];
        for (var j = 0; j < n; j++)
            at[j] = Step(start, j, shift + drift);
        var length = 1.0;
        for (var i = 2; i <= MostDrifting; i++)
        {
            var silent = at.Sum();
            length += silent;
            if (silent < 1e-13)
                return length;
            for (var j = 0; j < n; j++)
            {
                next[j] = 0;
                for (var s = 0; s < n; s++)
                    next[j] += at[s] * Step(_states[s], j, shift + (i * drift));
            }

            (at, next) = (next, at);
        }

        return double.PositiveInfinity; // no chart within the ranges served takes so long
    }

    private double Step(double from, int to, double level)
    {
        var x = _noise(from, _states[to]) - level;
        return _hasZero && to == 0
            ? Normal.CDF(0, 1, x)
            : _weights[to] * _density * Math.Exp(-x * x / 2) / Constants.Sqrt2Pi;
    }
}
