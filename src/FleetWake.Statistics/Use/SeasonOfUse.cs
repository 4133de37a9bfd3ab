namespace FleetWake.Statistics.Use;

/// <summary>
/// What a fleet's meters say about when its boats run and how much: hours are the boat's rate times the share of each day's
/// month, and come in lumps. Flat, so that it can be written down and read back; immutable.
/// </summary>
/// <param name="MonthShares">
/// Twelve, January first, mean 1 [1]: how many times the year's mean a boat runs on a day of that month; 0 where boats lie
/// ashore.
/// </param>
/// <param name="MeanHoursPerDay">Mean of what is believed of a boat's rate, over the whole year [h/d], above 0.</param>
/// <param name="Shape">
/// Shape of that gamma belief [1], above 0: the standard deviation is the mean over its root. Large when boats are alike.
/// </param>
/// <param name="OutingHours">
/// Variance over mean of the hours run in a time, the rate being known [h], above 0: the size of the lumps that they come in.
/// </param>
/// <param name="Boats">How many boats taught it; 0 for the belief without a fleet.</param>
/// <remarks>A plain carrier: it checks nothing, so that it can be read back; whoever uses it does.</remarks>
public sealed record SeasonOfUse(
    IReadOnlyList<double> MonthShares, double MeanHoursPerDay, double Shape, double OutingHours, int Boats)
{
    /// <summary>
    /// Without a fleet: a year without seasons, 0.2 to 2.1 hours a day with a chance of 80 %, in lumps of 6 h. Judgement, no
    /// source: from a private boat's Sundays to a hire boat that is out half of the days.
    /// </summary>
    public static SeasonOfUse Trade { get; } =
        new([1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], 1, 1.5, 6, 0) { SeasonDoubt = SeasonFit.DoubtWithoutFleet };

    /// <summary>
    /// How far hours told from another part of the year may be out because the shares are not known, standard deviation over
    /// mean [1], 0 to 1: 0.4 without a fleet, next to nothing for a fleet that was watched over a year.
    /// </summary>
    public double SeasonDoubt { get; init; }

    /// <summary>Learns shares, rate and lumps from a fleet.</summary>
    /// <param name="boats">For each engine its stretches, in any order; those that cannot be are left aside.</param>
    /// <returns>
    /// The fleet's season, drawn towards a flat year and <see cref="Trade"/> as far as its record is short;
    /// <see cref="Trade"/> itself when no boat has a stretch that says anything.
    /// </returns>
    /// <remarks>
    /// A stretch over several months is shared out among them by the shares themselves, again and again (the EM way for
    /// Poisson sums; Dempster, Laird and Rubin, J. R. Statist. Soc. B 39 (1977) 1-38, cited from memory), two lumps of a flat
    /// year being added to each month. Rate and shape are integrated over, see <see cref="FleetRate"/>. A boat that helped
    /// to teach counts among the fleet too: that adds less than <see cref="Shape"/> lumps to its own.
    /// </remarks>
    public static SeasonOfUse Fit(IReadOnlyList<IReadOnlyList<UseStretch>> boats)
    {
        ArgumentNullException.ThrowIfNull(boats);
        return SeasonFit.Of(boats);
    }

    /// <summary>Equal when every figure is.</summary>
    /// <param name="other">The other.</param>
    public bool Equals(SeasonOfUse? other) =>
        other is not null && MonthShares.SequenceEqual(other.MonthShares) && MeanHoursPerDay.Equals(other.MeanHoursPerDay)
        && Shape.Equals(other.Shape) && OutingHours.Equals(other.OutingHours) && Boats == other.Boats
        && SeasonDoubt.Equals(other.SeasonDoubt);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(MeanHoursPerDay, Shape, OutingHours, Boats, SeasonDoubt);

    internal void Check(string name)
    {
        if (MonthShares is not { Count: 12 } || MonthShares.Any(share => !(share is >= 0 and <= 12 + 1e-6)))
            throw new ArgumentException("Twelve shares, each 0 to 12, are wanted.", name);
        if (!(MeanHoursPerDay is >= 1e-6 and <= 24 && Shape is >= 1e-3 and <= 1e6 && OutingHours is >= 0.1 and <= 1000 && SeasonDoubt is >= 0 and <= 1))
            throw new ArgumentException("Rate, shape or lumps are out of range.", name);
    }
}
