namespace FleetWake.Statistics.Life;

/// <summary>The sums over one group's lifetimes that a Weibull likelihood is made of.</summary>
internal sealed class WeibullGroup
{
    private readonly Lifetime[] _lives;
    private readonly double _unit; // [h]; ages are counted in it so that no power overflows
    private readonly double _sumLogEnds; // of log(t / unit) over ends

    internal WeibullGroup(Lifetime[] lives)
    {
        _lives = lives;
        _unit = lives.Length == 0 ? 1 : lives.Max(life => life.Hours);
        Ended = lives.Count(life => life.HasEnded);
        _sumLogEnds = lives.Where(life => life.HasEnded).Sum(life => Math.Log(life.Hours / _unit));
    }

    internal int Ended { get; }

    /// <summary>
    /// Sum over lives of (t/unit)^k - (entry/unit)^k, and of the same with each power times log(age/unit) and times its
    /// square: the exposure and its first two derivatives in k.
    /// </summary>
    internal (double Zero, double One, double Two) Exposure(double k)
    {
        double zero = 0, one = 0, two = 0;
        foreach (var life in _lives)
        {
            Add(life.Hours, 1);
            if (life.FromHours > 0)
                Add(life.FromHours, -1);
        }

        return (zero, one, two);

        void Add(double hours, int sign)
        {
            var log = Math.Log(hours / _unit);
            var power = sign * Math.Exp(k * log);
            zero += power;
            one += power * log;
            two += power * log * log;
        }
    }

    /// <summary>Logarithm of the scale [log h] that is likeliest for a shape: eta^k = exposure / ends.</summary>
    internal double BestLogScale(double k) => Math.Log(_unit) + (Math.Log(Exposure(k).Zero / Ended) / k);

    /// <summary>
    /// Log-likelihood: r log k - r k log eta + (k-1) sum log t - sum (t^k - entry^k) / eta^k; 0 when none ended and the
    /// scale is the likeliest, which is without bound.
    /// </summary>
    internal double LogLikelihood(double k, double logEta)
    {
        var eta = logEta - Math.Log(_unit); // its logarithm, in the unit
        return (Ended * (Math.Log(k) - (k * eta) - Math.Log(_unit))) + ((k - 1) * _sumLogEnds)
            - (Exposure(k).Zero * Math.Exp(-k * eta));
    }

    internal double BestLogLikelihood(double k) => Ended == 0 ? 0 : LogLikelihood(k, BestLogScale(k));

    /// <summary>d/dk of <see cref="BestLogLikelihood"/>: r / k + sum log t - r one / zero.</summary>
    internal double Score(double k)
    {
        if (Ended == 0)
            return 0;
        var (zero, one, _) = Exposure(k);
        return (Ended / k) + _sumLogEnds - (Ended * one / zero);
    }

    /// <summary>-d2/dk2 of <see cref="BestLogLikelihood"/>.</summary>
    internal double Curvature(double k)
    {
        if (Ended == 0)
            return 0;
        var (zero, one, two) = Exposure(k);
        var mean = one / zero;
        return (Ended / (k * k)) + (Ended * ((two / zero) - (mean * mean)));
    }

    /// <summary>d log eta / dk of the likeliest scale.</summary>
    internal double LogScaleSlope(double k)
    {
        var (zero, one, _) = Exposure(k);
        return ((one / zero) / k) - (Math.Log(zero / Ended) / (k * k));
    }
}
