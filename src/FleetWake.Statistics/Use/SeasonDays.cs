namespace FleetWake.Statistics.Use;

/// <summary>Days that count as much as the share of their month: a boat runs at its rate for so many of them.</summary>
internal static class SeasonDays
{
    /// <summary>Days of each month after one date up to another, in an array of twelve.</summary>
    internal static double[] ByMonth(DateOnly from, DateOnly to)
    {
        var days = new double[12];
        foreach (var (month, count) in Months(from, to))
            days[month - 1] += count;
        return days;
    }

    /// <summary>Season days after one date up to another; 0 when the second is not later.</summary>
    internal static double Between(IReadOnlyList<double> shares, DateOnly from, DateOnly to)
    {
        var sum = 0.0;
        foreach (var (month, count) in Months(from, to))
            sum += count * shares[month - 1];
        return sum;
    }

    /// <summary>The first date by which so many season days have gone since another; null when none has until the last.</summary>
    internal static DateOnly? Reached(IReadOnlyList<double> shares, DateOnly from, double seasonDays, DateOnly last)
    {
        if (seasonDays <= 0)
            return from;
        var (before, left) = (from, seasonDays);
        foreach (var (month, count) in Months(from, last))
        {
            var share = shares[month - 1];
            // A billionth of a day more or less is rounding, and no reason to name the next month.
            if (left <= (count * share) + 1e-9 && share > 0)
                return before.AddDays(Math.Clamp((int)Math.Ceiling((left - 1e-9) / share), 1, count));
            (before, left) = (before.AddDays(count), left - (count * share));
        }

        return null;
    }

    private static IEnumerable<(int Month, int Days)> Months(DateOnly from, DateOnly to)
    {
        while (from < to)
        {
            var next = from.AddDays(1); // the first day that counts
            var end = new DateOnly(next.Year, next.Month, DateTime.DaysInMonth(next.Year, next.Month));
            if (end > to)
                end = to;
            yield return (next.Month, end.DayNumber - from.DayNumber);
            from = end;
        }
    }
}
