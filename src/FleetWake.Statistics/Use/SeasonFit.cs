namespace FleetWake.Statistics.Use;

/// <summary>Shares of the months and size of lumps from a fleet's stretches.</summary>
internal static class SeasonFit
{
    private const int Rounds = 100; // of sharing out
    private const double FlatLumps = 2; // of a flat year added to each month: a share is believed within a factor of two
    private const double TradeStretches = 10; // what the trade's lump counts for
    private const int ShortestDays = 28; // of stretches that tell lumps: bad weeks come together, and so do holidays
    private const double SmallestLump = 0.5; // [h]
    private const double LargestLump = 60; // [h]

    private const double MonthsAhead = 3; // of which a forecast is made, about: their errors cancel in part

    /// <summary>Standard deviation over mean when only the flat year is believed.</summary>
    internal static readonly double DoubtWithoutFleet = Math.Sqrt(1 / FlatLumps / MonthsAhead);

    private sealed record Stretch(DateOnly From, int Days, double Hours, double[] ByMonth);

    internal static SeasonOfUse Of(IReadOnlyList<IReadOnlyList<UseStretch>> boats)
    {
        var fleet = boats.Select(boat => boat.Where(s => s.CanBe)
                .Select(s => new Stretch(s.From, s.Days, s.EngineHours, SeasonDays.ByMonth(s.From, s.To)))
                .OrderBy(s => s.From).ThenBy(s => s.Days).ThenBy(s => s.Hours).ToArray())
            .Where(boat => boat.Length > 0)
            .ToArray();
        if (fleet.Length == 0)
            return SeasonOfUse.Trade;

        var lump = SeasonOfUse.Trade.OutingHours;
        var (shares, _) = Shares(fleet, lump);
        lump = Lump(fleet, shares);
        (shares, var doubt) = Shares(fleet, lump);
        lump = Lump(fleet, shares);
        var (mean, shape) = FleetRate.Of(
            [.. fleet.Select(boat => (boat.Sum(s => s.Hours) / lump, boat.Sum(s => Expected(s, shares)) / lump))]);
        return new SeasonOfUse(shares, Math.Clamp(mean, 1e-6, 24), shape, lump, fleet.Length) { SeasonDoubt = doubt };
    }

    private static (double[] Shares, double Doubt) Shares(Stretch[][] fleet, double lump)
    {
        var (shares, variance) = (Enumerable.Repeat(1.0, 12).ToArray(), 0.0);
        for (var round = 0; round < Rounds; round++)
        {
            double[] run = new double[12], atOne = new double[12];
            foreach (var boat in fleet)
            {
                var rate = Rate(boat, shares);
                foreach (var stretch in boat)
                {
                    var expected = Expected(stretch, shares);
                    for (var m = 0; m < 12; m++)
                    {
                        atOne[m] += rate * stretch.ByMonth[m];
                        if (expected > 0)
                            run[m] += stretch.Hours * stretch.ByMonth[m] * shares[m] / expected;
                    }
                }
            }

            var flat = FlatLumps * lump;
            for (var m = 0; m < 12; m++)
                shares[m] = (run[m] + flat) / (atOne[m] + flat);
            // A share is gamma distributed about that quotient, the divisor over the lump its rate.
            variance = Enumerable.Range(0, 12).Average(m => shares[m] * lump / (atOne[m] + flat));
            var mean = shares.Average();
            for (var m = 0; m < 12; m++)
                shares[m] /= mean;
        }

        return (shares, Math.Min(1, Math.Sqrt(variance / MonthsAhead)));
    }

    // Pearson's: squares of what was run more or less than expected, over what was expected.
    private static double Lump(Stretch[][] fleet, double[] shares)
    {
        var (squares, count) = (TradeStretches * SeasonOfUse.Trade.OutingHours, TradeStretches - 11.0);
        foreach (var boat in fleet)
        {
            var rate = Rate(boat, shares);
            var (hours, expected, days) = (0.0, 0.0, 0);
            count--; // its rate was taken from the same hours
            foreach (var stretch in boat)
            {
                (hours, expected, days) = (hours + stretch.Hours, expected + (rate * Expected(stretch, shares)), days + stretch.Days);
                if (days < ShortestDays)
                    continue;
                // Less than an outing expected: one would count for a hundred, none for nothing.
                if (expected > SeasonOfUse.Trade.OutingHours / 3)
                    (squares, count) = (squares + ((hours - expected) * (hours - expected) / expected), count + 1);
                (hours, expected, days) = (0, 0, 0);
            }
        }

        return Math.Clamp(squares / Math.Max(count, TradeStretches), SmallestLump, LargestLump);
    }

    private static double Rate(Stretch[] boat, double[] shares)
    {
        var expected = boat.Sum(s => Expected(s, shares));
        return expected > 0 ? boat.Sum(s => s.Hours) / expected : 0;
    }

    private static double Expected(Stretch stretch, double[] shares)
    {
        var sum = 0.0;
        for (var m = 0; m < 12; m++)
            sum += stretch.ByMonth[m] * shares[m];
        return sum;
    }
}
