namespace FleetWake.Logbook.Findings.Forecasts;

/// <summary>What was foretold of a mounting on a day, held against what came.</summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Name">The boat's name.</param>
/// <param name="Position">The position.</param>
/// <param name="Mounting">The mounting.</param>
/// <param name="NextTrial">The RPM of the next trial that counted [RPM].</param>
/// <param name="Exit">Engine hours after its last trial to the edge of the band [h]; null where no date was foretold.</param>
/// <param name="Leaves">The chance of leaving the band within 100 engine hours; null where none was told.</param>
public sealed record ForecastCheck(string Boat, string Name, Position Position, string Mounting, IntervalCheck NextTrial, IntervalCheck? Exit, ChanceCheck? Leaves);

/// <summary>A foretold interval with what came.</summary>
/// <param name="Outcome">How the two lie.</param>
/// <param name="Low">Lower end; null while nothing has come that it would be reckoned for.</param>
/// <param name="High">Upper end; null too when it lies beyond the horizon.</param>
/// <param name="Level">Level claimed [1].</param>
/// <param name="Came">What came; of a band exit the first hours at which a trial lay outside. Null while it is open.</param>
public sealed record IntervalCheck(IntervalOutcome Outcome, double? Low, double? High, double Level, double? Came);

/// <summary>How a foretold interval and what came lie.</summary>
public enum IntervalOutcome
{
    /// <summary>Not told yet: no trial since, or trials that leave it open on which side of an end it came.</summary>
    Open,

    /// <summary>It came within.</summary>
    Held,

    /// <summary>Less, or sooner.</summary>
    Below,

    /// <summary>More, or later.</summary>
    Above,
}

/// <summary>A stated chance with what came.</summary>
/// <param name="Chance">The chance [1].</param>
/// <param name="Happened">Whether it happened; null while nobody can tell.</param>
public sealed record ChanceCheck(double Chance, bool? Happened);
