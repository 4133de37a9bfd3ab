namespace FleetWake.Logbook.Duties;

/// <summary>Something that is due on a boat by a calendar date of its dock.</summary>
/// <param name="Kind">What is due.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="BoatName">Its name for people.</param>
/// <param name="Dock">Its dock.</param>
/// <param name="Position">The position.</param>
/// <param name="DueOn">Dock's date by which it is due.</param>
/// <param name="DaysOverdue">Days since then on the day of the outlook; 0 or less when not overdue.</param>
/// <param name="Why">Why it is due.</param>
public sealed record DueItem(DutyKind Kind, string Boat, string BoatName, string Dock, Position Position, DateOnly DueOn, int DaysOverdue, string Why)
{
    /// <summary>Its date has passed.</summary>
    public bool Overdue() => DaysOverdue > 0;
}

/// <summary>What can be due.</summary>
public enum DutyKind
{
    /// <summary>A look at prop and shaft after a strike.</summary>
    AfterStrikeInspection,

    /// <summary>The six-monthly look at prop and shaft.</summary>
    SixMonthlyInspection,
}
