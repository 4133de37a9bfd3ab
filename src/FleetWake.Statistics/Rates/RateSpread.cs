using MathNet.Numerics;

namespace FleetWake.Statistics.Rates;

/// <summary>
/// One value of the spread c among true rates, how likely it is, and what follows from it. The fleet's mean is a row of
/// nodes about its mode.
/// </summary>
internal sealed class RateSpread
{
    internal const double Widest = 1.5; // of c
    internal const double Cell = 0.1; // of c
    private const double PriorSd = 1.5; // of log m

    private readonly double[] _m; // nodes of the fleet's mean
    private readonly double[] _weight; // theirs, adding up to 1
    private readonly double _k; // shape, 1 / c^2
    private double _logEvidence;

    private RateSpread(double c, Tally[] tallies)
    {
        C = c;
        _k = 1 / (c * c);
        var (mode, sd) = Mode(tallies);
        // Half a standard deviation apart: enough for the sum, and for the gammas of unlike m to run into each other.
        _m = [.. Enumerable.Range(-14, 29).Select(i => Math.Exp(mode + (i * sd / 2)))];
        var log = _m.Select(m => LogPosterior(m, tallies)).ToArray();
        var top = log.Max();
        _weight = [.. log.Select(value => Math.Exp(value - top))];
        var sum = _weight.Sum();
        _logEvidence = top + Math.Log(sum * sd / 2);
        for (var i = 0; i < _weight.Length; i++)
            _weight[i] /= sum;
    }

    /// <summary>The spread, sd over mean [1].</summary>
    internal double C { get; }

    /// <summary>How likely, all values adding up to 1.</summary>
    internal double Weight { get; private set; }

    /// <summary>All spreads, by the evidence of tallies whose exposure is in the fleet's own unit.</summary>
    internal static IReadOnlyList<RateSpread> Weighed(Tally[] tallies)
    {
        var spreads = Enumerable.Range(0, (int)Math.Round(Widest / Cell))
            .Select(i => new RateSpread((i + 0.5) * Cell, tallies)).ToArray();
        var top = spreads.Max(spread => spread._logEvidence);
        var sum = spreads.Sum(spread => Math.Exp(spread._logEvidence - top));
        foreach (var spread in spreads)
            spread.Weight = Math.Exp(spread._logEvidence - top) / sum;
        return spreads;
    }

    /// <summary>The unit's rate: a gamma for each node of the fleet's mean.</summary>
    internal IEnumerable<GammaPart> UnitRate(Tally tally) => _m.Select((m, i) =>
        new GammaPart(Weight * _weight[i], _k + tally.Count, (_k / m) + tally.Exposure));

    /// <summary>The nodes of the fleet's mean, each with its weight.</summary>
    internal IEnumerable<(double Mean, double Weight)> FleetMean => _m.Select((m, i) => (m, Weight * _weight[i]));

    /// <summary>The weight of the unit's own record, E / (k/m + E).</summary>
    internal double OwnShare(Tally tally) =>
        _m.Select((m, i) => _weight[i] * tally.Exposure / ((_k / m) + tally.Exposure)).Sum();

    // Negative binomial, less what is the same for all k and m.
    private double LogPosterior(double m, Tally[] tallies)
    {
        var b = _k / m;
        var x = Math.Log(m) / PriorSd; // the exposure's unit makes log m about 0
        var sum = -x * x / 2;
        foreach (var (y, E) in tallies)
        {
            sum += SpecialFunctions.GammaLn(_k + y) - SpecialFunctions.GammaLn(_k)
                - (_k * Log1p(E / b)) - (y * Math.Log(b + E));
        }

        return sum;
    }

    // Concave in log m, so Newton with a short rein gets to the top.
    private (double Mode, double Sd) Mode(Tally[] tallies)
    {
        var x = 0.0; // log m
        double information;
        for (var i = 0; ; i++)
        {
            var score = -x / (PriorSd * PriorSd);
            information = 1 / (PriorSd * PriorSd);
            var b = _k / Math.Exp(x);
            foreach (var (y, E) in tallies)
            {
                var w = b / (b + E);
                score += (_k + y) * w;
                score -= _k;
                information += (_k + y) * w * (1 - w);
            }

            var step = Math.Clamp(score / information, -1, 1);
            x += step;
            if (i == 200 || Math.Abs(step) < 1e-9)
                return (x, 1 / Math.Sqrt(information));
        }
    }

    private static double Log1p(double x) => x < 1e-4 ? x - (x * x / 2) + (x * x * x / 3) : Math.Log(1 + x);
}
