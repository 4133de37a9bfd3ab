namespace FleetWake.Statistics.Use;

/// <summary>When an engine has run the hours that carry it out of its band, as dates.</summary>
/// <param name="Earliest">The date by which it has left with a chance of 10 %.</param>
/// <param name="Median">The date by which it has left with a chance of one half.</param>
/// <param name="Latest">The date by which it has left with a chance of 90 %.</param>
/// <param name="Level">The share of intervals from the first to the last that hold the truth: 0.8.</param>
/// <remarks>
/// A date that is the day of the last meter reading says "by then already". Null says beyond the horizon, if ever: more than
/// ten years after that reading, or more engine hours than the forecast of hours goes.
/// </remarks>
public sealed record ExitDate(DateOnly? Earliest, DateOnly? Median, DateOnly? Latest, double Level)
{
    /// <summary>How far dates go after the last meter reading [years].</summary>
    public const int HorizonYears = 10;

    /// <summary>How far the chance of an exit is asked for, after the last trial [h].</summary>
    public const double HorizonHours = 2000;

    /// <summary>
    /// P(out by a date) = E chance(hours run since the trial + hours run from the reading to that date), the second in doubt
    /// both by the boat's rate and by how outings fall; the doubt of the chance itself is in it.
    /// </summary>
    /// <param name="chanceWithinHours">
    /// The chance that it has left its band within so many engine hours after its last trial [1], asked from 0 to
    /// <see cref="HorizonHours"/>, never falling. What is not a number or falls counts as what stood before it.
    /// </param>
    /// <param name="hoursRunSince">
    /// Engine hours run from the last trial to the last meter reading [h]; what is below 0 or not a number counts as 0.
    /// </param>
    /// <param name="readOn">Day of that reading.</param>
    /// <param name="use">What is believed of the boat's use.</param>
    public static ExitDate Of(Func<double, double> chanceWithinHours, double hoursRunSince, DateOnly readOn, UsePosterior use)
    {
        ArgumentNullException.ThrowIfNull(chanceWithinHours);
        ArgumentNullException.ThrowIfNull(use);
        var begin = hoursRunSince > 0 ? Math.Min(hoursRunSince, HorizonHours) : 0;
        var last = readOn <= DateOnly.MaxValue.AddYears(-HorizonYears) ? readOn.AddYears(HorizonYears) : DateOnly.MaxValue;
        var chance = new ExitChance(chanceWithinHours, begin, use);
        var most = SeasonDays.Between(use.MonthShares, readOn, last);
        var reached = 0.0; // a later share is never earlier, rounding or not
        DateOnly? By(double share) => chance.SeasonDays(share, most) is { } days
            ? SeasonDays.Reached(use.MonthShares, readOn, reached = Math.Max(reached, days), last)
            : null;
        return new ExitDate(By(0.1), By(0.5), By(0.9), 0.8);
    }
}
