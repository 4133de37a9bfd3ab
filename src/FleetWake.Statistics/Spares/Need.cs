using MathNet.Numerics;

namespace FleetWake.Statistics.Spares;

/// <summary>
/// How many props of one size will be asked for within a time, as the probability of each number. Immutable; made by the
/// factories here, and added up.
/// </summary>
public sealed class Need
{
    /// <summary>Greatest mean served; nobody holds a thousand props of a size.</summary>
    public const double GreatestMean = 1000;

    private const double WidestDoubt = 100; // variance by the rate's doubt over that by chance
    private const double Negligible = 1e-16; // probability at which a tail is cut off

    private readonly double[] _p;
    private readonly double[] _atMost;

    private Need(double[] p)
    {
        var sum = p.Sum();
        _p = [.. p.Select(value => value / sum)];
        _atMost = new double[p.Length];
        var below = 0.0;
        for (var n = 0; n < _p.Length; n++)
        {
            below += _p[n];
            _atMost[n] = Math.Min(1, below);
            Mean += n * _p[n];
        }

        for (var n = 0; n < _p.Length; n++)
            Variance += (n - Mean) * (n - Mean) * _p[n];
    }

    /// <summary>Nothing will be asked for.</summary>
    public static Need None { get; } = new([1]);

    /// <summary>The expected number.</summary>
    public double Mean { get; }

    /// <summary>Its variance, of a single outcome about the mean.</summary>
    public double Variance { get; }

    /// <summary>Numbers above this one have no probability worth counting.</summary>
    public int Greatest => _p.Length - 1;

    /// <summary>Events that come singly at a known rate: Poisson.</summary>
    /// <param name="mean">Expected number, rate times time; 0 to <see cref="GreatestMean"/>.</param>
    /// <returns>The need.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static Need Poisson(double mean)
    {
        CheckMean(mean, nameof(mean));
        return mean == 0 ? None : FromMode(
            (int)mean, n => (n * Math.Log(mean)) - mean - SpecialFunctions.GammaLn(n + 1.0));
    }

    /// <summary>
    /// Events at a rate that is itself in doubt, as a gamma distribution with the rate's mean and standard error: their
    /// number is negative binomial (Greenwood and Yule, J. R. Statist. Soc. 83 (1920) 255-279; cited from memory).
    /// </summary>
    /// <param name="rate">Events per unit of time; only value and standard error are used, both zero or more,
    /// the error at most five times the value, and the doubt it leaves on the need at most a hundred times the variance that
    /// chance gives it: beyond that nothing is known.</param>
    /// <param name="duration">The time looked ahead, such as the lead time, in the rate's unit; zero or more, finite.</param>
    /// <returns>The need; Poisson when the rate has no doubt.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or more than <see cref="GreatestMean"/>.</exception>
    public static Need During(Estimate rate, double duration)
    {
        ArgumentNullException.ThrowIfNull(rate);
        if (!(rate.Value >= 0) || !double.IsFinite(rate.Value))
            throw new ArgumentOutOfRangeException(nameof(rate), rate.Value, "The rate must be zero or more and finite.");
        if (!(rate.StandardError >= 0) || !double.IsFinite(rate.StandardError))
            throw new ArgumentOutOfRangeException(
                nameof(rate), rate.StandardError, "The rate's standard error must be zero or more and finite.");
        if (!(duration >= 0) || !double.IsFinite(duration))
            throw new ArgumentOutOfRangeException(nameof(duration), duration, "Must be zero or more and finite.");
        CheckMean(rate.Value * duration, nameof(duration));

        var relative = rate.StandardError / rate.Value;
        if (rate.Value == 0 || rate.StandardError == 0 || relative * relative < 1e-9)
            return Poisson(rate.Value * duration);
        if (!(relative <= 5))
            throw new ArgumentOutOfRangeException(
                nameof(rate), rate.StandardError, $"The standard error must be 0 to 5 times the rate {rate.Value}.");
        if (rate.Value * duration * relative * relative > WidestDoubt)
            throw new ArgumentOutOfRangeException(
                nameof(rate), rate.StandardError, $"The doubt may make the need vary {WidestDoubt} times as much as chance.");
        return Gamma(1 / (relative * relative), rate.Value * duration);
    }

    /// <summary>One prop that may be asked for or not: a mounting that may leave its band within the time.</summary>
    /// <param name="chance">The chance [1], 0 to 1.</param>
    /// <returns>The need.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not within 0 and 1.</exception>
    public static Need OneWithChance(double chance)
    {
        if (!(chance >= 0 && chance <= 1))
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "Must lie within 0 and 1.");
        return chance == 0 ? None : new Need([1 - chance, chance]);
    }

    /// <summary>
    /// Needs that have nothing to do with each other, added up: boats that use the same size, strikes and wear. Rates
    /// that were shrunk together are a little alike, which makes the sum vary somewhat more than this says.
    /// </summary>
    /// <param name="needs">Any number of needs.</param>
    /// <returns>The sum; <see cref="None"/> for none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The expected sum is above <see cref="GreatestMean"/>.</exception>
    public static Need Sum(IEnumerable<Need> needs)
    {
        ArgumentNullException.ThrowIfNull(needs);
        return needs.Aggregate(None, (sum, need) => sum.And(need));
    }

    /// <summary>The probability of exactly so many.</summary>
    /// <param name="number">Any number; negative ones have probability 0.</param>
    public double Exactly(int number) => number >= 0 && number < _p.Length ? _p[number] : 0;

    /// <summary>The probability of so many or fewer.</summary>
    /// <param name="number">Any number; negative ones have probability 0.</param>
    public double AtMost(int number) => number < 0 ? 0 : number < _p.Length ? _atMost[number] : 1;

    /// <summary>The smallest number that is enough with a probability.</summary>
    /// <param name="probability">The probability [1], 0 to 1 exclusive.</param>
    /// <returns>The number, zero or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1.</exception>
    public int Enough(double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "Must lie between 0 and 1.");
        var n = Array.FindIndex(_atMost, below => below >= probability);
        return n >= 0 ? n : Greatest;
    }

    /// <summary>The expected number left over from a stock, E max(S - D, 0).</summary>
    /// <param name="stock">The stock S, zero or more.</param>
    /// <returns>Expected props on hand at the end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public double ExpectedLeft(int stock)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stock);
        var sum = 0.0;
        for (var n = 0; n < Math.Min(stock, _p.Length); n++)
            sum += (stock - n) * _p[n];
        return sum;
    }

    /// <summary>The expected number that a stock falls short by, E max(D - S, 0).</summary>
    /// <param name="stock">The stock S, zero or more.</param>
    /// <returns>Expected props wanting at the end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public double ExpectedShort(int stock)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stock);
        var sum = 0.0;
        for (var n = Math.Max(0, stock); n < _p.Length; n++)
            sum += (n - stock) * _p[n];
        return sum;
    }

    private Need And(Need other)
    {
        CheckMean(Mean + other.Mean, "needs");
        var p = new double[_p.Length + other._p.Length - 1];
        for (var i = 0; i < _p.Length; i++)
        {
            for (var j = 0; j < other._p.Length; j++)
                p[i + j] += _p[i] * other._p[j];
        }

        var last = p.Length - 1;
        while (last > 0 && p[last] < Negligible)
            last--;
        return new Need(p[..(last + 1)]);
    }

    private static Need Gamma(double shape, double mean)
    {
        if (mean == 0)
            return None;
        var q = mean / (shape + mean); // of one more event
        var first = (shape * Math.Log(1 - q)) - SpecialFunctions.GammaLn(shape);
        return FromMode(Math.Max(0, (int)((shape - 1) * mean / shape)), n =>
            first + SpecialFunctions.GammaLn(shape + n) - SpecialFunctions.GammaLn(n + 1.0) + (n * Math.Log(q)));
    }

    // Out from the likeliest number until nothing is left: no power under- or overflows on the way.
    private static Need FromMode(int mode, Func<int, double> logP)
    {
        var last = mode;
        while (logP(last) > Math.Log(Negligible))
            last = Math.Max(last + 1, (int)(last * 1.05));
        var p = new double[last + 1];
        for (var n = 0; n <= last; n++)
            p[n] = Math.Exp(logP(n));
        return new Need(p);
    }

    private static void CheckMean(double mean, string name)
    {
        if (!(mean >= 0 && mean <= GreatestMean))
            throw new ArgumentOutOfRangeException(name, mean, $"The expected number must lie within 0 and {GreatestMean}.");
    }
}
