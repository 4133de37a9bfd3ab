namespace FleetWake.Statistics.Drift;

/// <summary>One more trial as it might be run, and the decision that it bears on.</summary>
/// <param name="HoursAhead">
/// When it would be run, in engine hours after the last trial [h]; brought to 0 to <see cref="BandExit.HorizonHours"/>.
/// </param>
/// <param name="ActWithinHours">
/// One acts when the band is likely left within so many hours of that trial [h], brought to the same range. Judgement: 100.
/// </param>
/// <param name="ActAtChance">The chance from which on it is likely [1], 0 to 1. Judgement: a half.</param>
/// <param name="GaugeSdRpm">
/// Standard deviation that the gauge adds to the fleet's noise [1/min]: its step over the root of 12, say. An infinite one is
/// a gauge that shows nothing.
/// </param>
/// <remarks>What is NaN counts as not given, and a figure outside its range as the end of it.</remarks>
public sealed record NextTrialPlan(double HoursAhead, double ActWithinHours = 100, double ActAtChance = 0.5, double GaugeSdRpm = 0)
{
    /// <summary>A gauge as bad as this shows nothing of any engine [1/min].</summary>
    private const double Useless = 1e6;

    /// <summary>
    /// When the trial of <see cref="NextTrialValue.LeastDriftShown"/> would be run instead, in engine hours after the last trial [h],
    /// in the range of <see cref="HoursAhead"/>; null for the trial itself. A drift shows later than a decision is due.
    /// </summary>
    public double? ShownHoursAhead { get; init; }

    internal NextTrialPlan InRange() => new(
        Within(HoursAhead, 0, BandExit.HorizonHours),
        Within(ActWithinHours, 100, BandExit.HorizonHours),
        Within(ActAtChance, 0.5, 1),
        Within(GaugeSdRpm, 0, Useless))
    {
        ShownHoursAhead = Within(ShownHoursAhead is { } hours && !double.IsNaN(hours) ? hours : HoursAhead, 0, BandExit.HorizonHours),
    };

    private static double Within(double figure, double otherwise, double most) => double.IsNaN(figure) ? otherwise : Math.Clamp(figure, 0, most);
}

/// <summary>What one more trial would decide.</summary>
/// <param name="ChangesDecisionChance">
/// Chance [1] that after it one would act where now one would not, or the other way round; 0 without a band, for then there is
/// nothing to decide.
/// </param>
/// <param name="DoubtRemovedShare">Share of the drift's variance that it is expected to remove [1], 0 to 1.</param>
/// <param name="LeastDriftShown">
/// The smallest steady drift [rpm per 100 h] whose 80 % limit is expected to leave out zero once that trial is in, or the one
/// at <see cref="NextTrialPlan.ShownHoursAhead"/> in its place, by the mounting's own trials without its fleet; null when no
/// drift that a prop can have would show.
/// </param>
public sealed record NextTrialValue(double ChangesDecisionChance, double DoubtRemovedShare, double? LeastDriftShown);
