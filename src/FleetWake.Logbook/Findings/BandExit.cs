namespace FleetWake.Logbook.Findings;

/// <summary>When drift carries a boat out of its band.</summary>
/// <param name="State">In words; hours stand only with <see cref="BandExitState.Forecast"/>, the earliest with <see cref="BandExitState.BeyondHorizon"/> too.</param>
/// <param name="Edge">The edge it drifts to.</param>
/// <param name="HoursFromLastTrial">Engine hours from the last trial to the edge [h]: it has left by then with a chance of one half.</param>
/// <param name="EarliestHours">Lower end of the interval [h]; 0 when it may be outside already.</param>
/// <param name="LatestHours">Upper end [h]; null when it lies beyond the horizon.</param>
/// <param name="Level">Level of the interval.</param>
public sealed record BandExit(
    BandExitState State,
    BandEdge? Edge = null,
    double? HoursFromLastTrial = null,
    double? EarliestHours = null,
    double? LatestHours = null,
    double? Level = null)
{
    /// <summary>The same as dates in the calendar of the dock, by how the boat is used; null where its use is not known.</summary>
    public BandExitDates? Dates { get; init; }

    /// <summary>Chance that it leaves the band, by either end, within the next 100 engine hours after the last reading of its meter [1]; null where nothing is forecast.</summary>
    public double? Within100HoursChance { get; init; }
}

/// <summary>When a boat leaves its band, as dates: both the doubt of the hours and that of the boat's use count.</summary>
/// <param name="Earliest">Lower end of the interval; null when it lies beyond the horizon.</param>
/// <param name="On">It has left by then with a chance of one half; null when that lies beyond the horizon.</param>
/// <param name="Latest">Upper end; null when it lies beyond the horizon.</param>
/// <param name="Level">Level of the interval.</param>
/// <param name="HoursPerMonth">Engine hours a month that the boat runs over the year, as its meter and its fleet's tell [h].</param>
/// <param name="ReckonedFrom">Day of the meter reading from which use was reckoned.</param>
public sealed record BandExitDates(DateOnly? Earliest, DateOnly? On, DateOnly? Latest, double Level, double HoursPerMonth, DateOnly ReckonedFrom);

/// <summary>What can be said of a band exit.</summary>
public enum BandExitState
{
    /// <summary>No band, no engine or no prop on record.</summary>
    NotKnown,

    /// <summary>Its own trials say next to nothing of a drift: fewer than two usable ones, all within an hour of running, or too rough. Nothing is said of a date.</summary>
    TooFewTrials,

    /// <summary>A strike, work on the prop or a change of the boat began a new baseline, and no trial has been run since.</summary>
    NoTrialSinceNewBaseline,

    /// <summary>It is outside already.</summary>
    AlreadyOutside,

    /// <summary>More likely than not beyond the horizon.</summary>
    BeyondHorizon,

    /// <summary>A forecast in hours with its interval.</summary>
    Forecast,
}
