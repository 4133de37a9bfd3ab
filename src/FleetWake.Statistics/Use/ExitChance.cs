namespace FleetWake.Statistics.Use;

/// <summary>
/// The chance of having left the band by so many season days after the meter reading: that of having left at the reading,
/// and for each piece of the hours after it the chance of leaving there times that of running so far.
/// </summary>
internal sealed class ExitChance
{
    private const int Pieces = 24;
    private const double Negligible = 1e-6; // chance of leaving within a piece

    private readonly List<(double Hours, double Chance)> _steps = [];
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
        var (low, below) = (0.0, _already - share);
        var (high, above) = (most, By(most) - share);
        if (!(above >= 0))
            return null;

        // False position, the end that stays put halved each time (Illinois; Dowell and Jarratt 1971, from memory), and a
        // halving where the interval does not shrink: between sharp steps the chance is flat.
        for (var i = 0; i < 80 && high - low > 1e-3; i++)
        {
            var middle = i % 3 == 2 ? (low + high) / 2 : low + ((high - low) * below / (below - above));
            if (!(middle > low && middle < high))
                middle = (low + high) / 2;
            var excess = By(middle) - share;
            if (excess >= 0)
                (high, above, below) = (middle, excess, below / 2);
            else
                (low, below, above) = (middle, excess, above / 2);
        }

        return high;
    }

    private double By(double seasonDays)
    {
        var sum = _already;
        foreach (var (hours, chance) in _steps)
            sum += chance * _use.ChanceRunAtLeast(seasonDays, hours);
        return sum;
    }

    // Until the piece matters little, or is short beside the doubt of the time that its hours take.
    private void Split(Func<double, double, double> at, double low, double below, double high, double above)
    {
        var (chance, middle) = (above - below, (low + high) / 2);
        if (chance <= Negligible)
            return;
        if (chance < 0.01 || high - low < Math.Max(0.25, 0.3 * middle * _use.RelativeDoubt(middle)))
        {
            _steps.Add((middle, chance));
            return;
        }

        var half = Math.Min(at(middle, below), above);
        Split(at, low, below, middle, half);
        Split(at, middle, half, high, above);
    }
}
