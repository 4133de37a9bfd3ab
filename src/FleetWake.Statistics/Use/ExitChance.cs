namespace FleetWake.Statistics.Use;

/// <summary>
/// The chance of having left the band by so many season days after the meter reading: that of having left at the reading,
/// and for each piece of the hours after it the chance of leaving there times that of running so far.
/// </summary>
internal sealed class ExitChance
{
    private const int Pieces = 24;
    private const double Tolerance = 0.02; // [d]
    private const double Negligible = 1e-6; // chance of leaving within a piece

    private readonly List<(double Hours, double Chance, RunChance Run)> _steps = [];
    private readonly double _already;
    private readonly UsePosterior _use;

    internal ExitChance(Func<double, double> chanceWithinHours, double begin, UsePosterior use)
    {
        _use = use;
        double At(double hours, double before)
        {
            var chance = chanceWithinHours(begin + hours);
            return chance > before ? Math.Min(chance, 1) : before;
        }

        _already = At(0, 0);
        // In equal ratios after the first: a forecast of hours has a relative error.
        var (span, low, below) = (ExitDate.HorizonHours - begin, 0.0, _already);
        for (var i = 0; i < Pieces && span > 0; i++)
        {
            var high = i == Pieces - 1 ? span : span * Math.Pow(2000, (i + 1.0 - Pieces) / (Pieces - 1));
            var above = At(high, below);
            Split(At, low, below, high, above);
            (low, below) = (high, above);
        }
    }

    /// <summary>The season days by which it has left with a chance; null when that takes more than the most.</summary>
    internal double? SeasonDays(double share, double most)
    {
        if (_already >= share)
            return 0;
        if (!(most > Tolerance) || By(Math.Log(most)).Chance < share)
            return null;

        // Newton's step on the logarithm from where the piece is expected; halving where that would leave what holds the root.
        var (low, high) = (Math.Log(Tolerance / 2), Math.Log(most));
        var at = Math.Clamp(Expected(share), low, high);
        for (var i = 0; i < 100 && high - low > 1e-12; i++)
        {
            var (chance, slope) = By(at);
            if (chance >= share)
                high = at;
            else
                low = at;
            var next = at + ((share - chance) / slope);
            if (!(next > low && next < high))
                next = (low + high) / 2;
            var moved = Math.Abs(Math.Exp(next) - Math.Exp(at));
            at = next;
            if (moved < Tolerance)
                break;
        }

        return Math.Exp(at);
    }

    private double Expected(double share)
    {
        var sum = _already;
        foreach (var (hours, chance, _) in _steps)
        {
            if ((sum += chance) >= share)
                return Math.Log(hours / _use.MeanRate);
        }

        return double.PositiveInfinity;
    }

    private (double Chance, double Slope) By(double logDays)
    {
        var (logX, logRest) = _use.Odds(Math.Exp(logDays));
        var (sum, rise) = (_already, 0.0);
        foreach (var (_, chance, run) in _steps)
        {
            var (reached, slope) = run.At(logX, logRest);
            (sum, rise) = (sum + (chance * reached), rise + (chance * slope));
        }

        return (sum, rise);
    }

    // Until the piece matters little, or is short beside the doubt of the time that its hours take.
    private void Split(Func<double, double, double> at, double low, double below, double high, double above)
    {
        var (chance, middle) = (above - below, (low + high) / 2);
        if (chance <= Negligible)
            return;
        if (chance < 0.01 || high - low < Math.Max(0.25, 0.3 * middle * _use.RelativeDoubt(middle)))
        {
            _steps.Add((middle, chance, _use.Run(middle)));
            return;
        }

        var half = Math.Min(at(middle, below), above);
        Split(at, low, below, middle, half);
        Split(at, middle, half, high, above);
    }
}
