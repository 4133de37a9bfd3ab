namespace FleetWake.Statistics.Drift;

/// <summary>When the level leaves the rated band at one of its ends, in engine hours after the last trial.</summary>
/// <param name="EarliestHours">The hours before which it has left with a chance of 10 % [h].</param>
/// <param name="MedianHours">The hours before which it has left with a chance of one half [h].</param>
/// <param name="LatestHours">The hours before which it has left with a chance of 90 % [h].</param>
/// <param name="Within500HoursChance">Chance that it has left within 500 h [1].</param>
/// <remarks>
/// 0 hours says that it is outside already, <see cref="HorizonHours"/> that it leaves beyond the horizon, if ever: nobody
/// keeps a prop that long. Two are equal when their four numbers are.
/// </remarks>
public sealed record BandExit(double EarliestHours, double MedianHours, double LatestHours, double Within500HoursChance)
{
    /// <summary>The horizon [h].</summary>
    public const double HorizonHours = 2000;

    // 0, then 60 hours from 5 to the horizon in equal ratios: a forecast has a relative error, not an absolute one.
    private static readonly double[] Grid =
        [0, .. Enumerable.Range(0, 60).Select(i => Math.Exp(Math.Log(5) + (i * Math.Log(HorizonHours / 5) / 59)))];

    private CrossingChance? Chance { get; init; }

    /// <summary>Chance that it has left within so many hours of the last trial [1], 0 to 1; never falls with the hours.</summary>
    /// <param name="hours">Hours [h]; brought to 0 to <see cref="HorizonHours"/>, a NaN to 0.</param>
    /// <returns>
    /// The exact chance of an assessment's forecast. One made of its four numbers alone knows no more than these: straight
    /// lines between them, from 0 at the last trial, and beyond them no more than the last.
    /// </returns>
    public double ChanceWithin(double hours)
    {
        var x = double.IsNaN(hours) ? 0 : Math.Clamp(hours, 0, HorizonHours);
        return Chance is { } chance ? chance.At(x) : Between(x);
    }

    /// <inheritdoc/>
    public bool Equals(BandExit? other) => other is not null && Numbers.Equals(other.Numbers);

    /// <inheritdoc/>
    public override int GetHashCode() => Numbers.GetHashCode();

    private (double, double, double, double) Numbers => (EarliestHours, MedianHours, LatestHours, Within500HoursChance);

    internal static BandExit Of(CrossingChance chance)
    {
        Span<double> known = stackalloc double[Grid.Length]; // the three ask at the same places of the grid, each place is worked out once
        known.Fill(double.NaN);
        (known[0], known[^1]) = (chance.At(0), chance.At(HorizonHours));
        return new(Invert(chance, known, 0.1), Invert(chance, known, 0.5), Invert(chance, known, 0.9), chance.At(500)) { Chance = chance };
    }

    /// <summary>The chance never falls with the hours: halve the grid, then a straight line between two of its places.</summary>
    private static double Invert(CrossingChance chance, Span<double> known, double share)
    {
        if (known[0] >= share) return 0;
        if (known[^1] < share) return HorizonHours;
        var (low, high) = (0, Grid.Length - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (double.IsNaN(known[middle])) known[middle] = chance.At(Grid[middle]);
            if (known[middle] < share) low = middle;
            else high = middle;
        }

        return Grid[low] + ((Grid[high] - Grid[low]) * (share - known[low]) / (known[high] - known[low]));
    }

    private double Between(double hours)
    {
        (double Hours, double Chance) before = (0, 0);
        foreach (var point in new[] { (EarliestHours, 0.1), (MedianHours, 0.5), (LatestHours, 0.9), (500, Within500HoursChance) }.Order())
        {
            var (at, chance) = point;
            if (at >= HorizonHours) break; // beyond the horizon, if ever
            chance = Math.Max(chance, before.Chance);
            if (hours < at) return before.Chance + ((chance - before.Chance) * (hours - before.Hours) / (at - before.Hours));
            before = (at, chance);
        }

        return before.Chance;
    }
}
