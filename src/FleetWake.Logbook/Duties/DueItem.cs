namespace FleetWake.Logbook.Duties;

/// <summary>Something that is due on a boat by a calendar date of its dock.</summary>
/// <param name="Kind">What is due.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="BoatName">Its name for people.</param>
/// <param name="Dock">Its dock.</param>
/// <param name="Position">The position; null when it is about the boat as a whole.</param>
/// <param name="DueOn">Dock's date by which it is due.</param>
/// <param name="DaysOverdue">Days since then on the day of the outlook; 0 or less when not overdue.</param>
/// <param name="Why">Why it is due.</param>
public sealed record DueItem(DutyKind Kind, string Boat, string BoatName, string Dock, Position? Position, DateOnly DueOn, int DaysOverdue, string Why)
{
    /// <summary>Id of the rule by which it is due; of a claim, that of its entry.</summary>
    public string RuleId { get; init; } = "";

    /// <summary>What is to be done, in few words.</summary>
    public string What { get; init; } = "";

    /// <summary>Id of the person who will see to it; null while nobody took it.</summary>
    public string? TakenBy { get; init; }

    /// <summary>Engine hours left by the last reading [h], negative when they are used up; null when only the calendar counts.</summary>
    public double? HoursLeft { get; init; }

    /// <summary>The hours that its clock started from were reckoned between readings rather than read.</summary>
    public bool Bridged { get; init; }

    /// <summary>Entry of the strike that called for it; null for what no single record called for.</summary>
    public Guid? Strike { get; init; }

    /// <summary>Its date has passed.</summary>
    public bool Overdue() => DaysOverdue > 0;
}

/// <summary>What can be due.</summary>
public enum DutyKind
{
    /// <summary>A look at prop and shaft after a strike.</summary>
    AfterStrikeInspection,

    /// <summary>The regular look at prop and shaft: six-monthly unless the operator set it otherwise.</summary>
    SixMonthlyInspection,

    /// <summary>The re-torque after the first outing of a mounting.</summary>
    FirstOutingRetorque,

    /// <summary>The look at prop and shaft before a boat that was laid up goes out again.</summary>
    BeforeRelaunch,

    /// <summary>By a rule of the operator's own.</summary>
    OwnRule,

    /// <summary>The last date on which a damage can be claimed.</summary>
    ClaimDeadline,
}
