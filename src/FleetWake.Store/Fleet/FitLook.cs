namespace FleetWake.Store.Fleet;

/// <summary>The last look at an operator's fleet, whether or not it made a new fit.</summary>
/// <param name="ThroughSequence">The newest event that it was looked at with; 0 before the first look.</param>
/// <param name="Records">How many records of boats, engines and props it had then.</param>
/// <param name="LookedAt">When, by the clock of the program; null before the first look.</param>
/// <param name="LeftOut">Boats that were left out and why, one a line; null when none was.</param>
/// <param name="FailedAt">When a fit failed since; null when none did.</param>
/// <param name="LastError">Why it failed.</param>
public sealed record FitLook(long ThroughSequence, long Records, DateTimeOffset? LookedAt, string? LeftOut, DateTimeOffset? FailedAt, string? LastError)
{
    /// <summary>Nobody has looked yet.</summary>
    public static FitLook None { get; } = new(0, 0, null, null, null, null);
}

/// <summary>What has come since the last look at a fleet, as far as the daemon has folded it.</summary>
/// <param name="UpTo">The newest event that is folded.</param>
/// <param name="Records">Records of boats, engines and props since.</param>
/// <param name="Trials">Trials among them.</param>
/// <param name="Oldest">When the first of them was stored; null when there is none.</param>
/// <param name="Quiet">Nothing has come for a while: an import is over, a phone has emptied its outbox.</param>
public sealed record RecordsSince(long UpTo, long Records, long Trials, DateTimeOffset? Oldest, bool Quiet);
