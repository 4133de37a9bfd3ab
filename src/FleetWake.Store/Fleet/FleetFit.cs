using FleetWake.Logbook.Fleet;

namespace FleetWake.Store.Fleet;

/// <summary>When a fleet is to be fitted, and what of it recorded.</summary>
public enum FitWish
{
    /// <summary>If it is due and nobody else is at it; recorded if it moved.</summary>
    WhenDue,

    /// <summary>Now, after whoever is at it; recorded if it moved.</summary>
    Now,

    /// <summary>Now, and recorded even if nothing moved.</summary>
    Always,
}

/// <summary>What became of a fit.</summary>
/// <param name="Outcome">In a word.</param>
/// <param name="Newest">The newest fit that is recorded, this one or the one before; null while there is none, or when nothing was looked at.</param>
/// <param name="Why">Why it was recorded or not.</param>
public sealed record FleetFit(FitOutcome Outcome, FleetPriorFitted? Newest, string Why)
{
    /// <summary>Not due, or another worker is at it.</summary>
    public static FleetFit NotNow { get; } = new(FitOutcome.NotNow, null, "not due, or another worker is at it");

    /// <summary>Boats whose history could not be told or assessed.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];
}

/// <summary>What became of a fit.</summary>
public enum FitOutcome
{
    /// <summary>It is a fact now.</summary>
    Recorded,

    /// <summary>
    /// It differs too little from the last one. Findings are kept for good, and a new number makes those of every boat anew:
    /// a fleet of a hundred boats would store a hundred findings a night that say what is known.
    /// </summary>
    NotMoved,

    /// <summary>No boat has a usable trial yet.</summary>
    NothingToLearn,

    /// <summary>Nothing was looked at.</summary>
    NotNow,
}
