namespace FleetWake.Logbook.Entries;

/// <summary>Two records that cannot both be so. Both are kept; a person settles it. Worded as a question, not as a mistake.</summary>
/// <param name="Kind">What kind of contradiction.</param>
/// <param name="Entries">The entries that disagree, in order.</param>
/// <param name="Question">The question to the person who settles it.</param>
public sealed record Contradiction(ContradictionKind Kind, IReadOnlyList<Guid> Entries, string Question);

/// <summary>Kinds of contradiction.</summary>
public enum ContradictionKind
{
    /// <summary>One prop is mounted in two places at once.</summary>
    PropInTwoPlaces,

    /// <summary>A prop was mounted where another one still was.</summary>
    PropAlreadyFitted,

    /// <summary>A prop was removed that was not recorded as mounted there.</summary>
    NoPropToRemove,

    /// <summary>An hour meter ran backwards, or faster than the clock.</summary>
    HoursOutOfLine,

    /// <summary>A wide-open-throttle reading far from the engine's rated band.</summary>
    RpmOutOfLine,

    /// <summary>A trial at a position with no prop on record.</summary>
    TrialWithoutProp,

    /// <summary>A record names a position that the boat does not have.</summary>
    NoSuchPosition,

    /// <summary>An amendment or retraction names an entry that is not on this record.</summary>
    NothingToCorrect,

    /// <summary>Another prop was found fitted than was on record there.</summary>
    FoundAnotherProp,

    /// <summary>An engine came off a place where it was not on record.</summary>
    EngineNotThere,

    /// <summary>A prop turns the other way than its engine's shaft.</summary>
    RotationDoesNotFit,

    /// <summary>The same thing was registered twice with different content.</summary>
    RegisteredTwice,

    /// <summary>A prop is on a boat by one record and away by another: at a shop, put by, retired or given back.</summary>
    PropAway,

    /// <summary>A cost or an end was told of a claim that is not on record.</summary>
    NoSuchClaim,
}
