namespace FleetWake.Demo;

/// <summary>How much the boats are out from month to month. Summer lies around New Year; some boats go out in winter too.</summary>
internal static class Season
{
    // Shares of the year's hours, January first; only their ratios matter.
    private static readonly double[] Shares = [2.4, 2.0, 1.4, 1.0, 0.45, 0.25, 0.25, 0.3, 0.6, 0.9, 1.1, 1.9];

    /// <summary>Months with monthly sea trials.</summary>
    public static bool InSeason(DateOnly day) => Shares[day.Month - 1] >= 0.6;

    /// <summary>Hours that an engine ran from one moment to another [h].</summary>
    /// <param name="yearHours">Its hours in a year [h].</param>
    /// <param name="from">The earlier moment.</param>
    /// <param name="to">The later moment.</param>
    public static double Hours(double yearHours, DateTimeOffset from, DateTimeOffset to)
    {
        var hours = 0.0;
        for (var at = from; at < to;)
        {
            var nextMonth = new DateTimeOffset(at.Year, at.Month, 1, 0, 0, 0, at.Offset).AddMonths(1);
            var until = nextMonth < to ? nextMonth : to;
            hours += yearHours * Shares[at.Month - 1] / Shares.Sum() * (until - at).TotalDays / DateTime.DaysInMonth(at.Year, at.Month);
            at = until;
        }

        return hours;
    }
}
