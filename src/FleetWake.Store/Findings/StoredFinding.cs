using FleetWake.Logbook.Findings;

namespace FleetWake.Store.Findings;

/// <summary>A finding as stored: append-only, keyed by what it was made from, so that any past one can be looked at.</summary>
/// <param name="Id">Boat, hash of the logs it was made from, prior version and method.</param>
/// <param name="Boat">The boat.</param>
/// <param name="InputHash">Hash of the logs.</param>
/// <param name="PriorVersion">Number of the fleet prior it was made under; 0 for the trade's, before the first fit.</param>
/// <param name="Method">Method and version.</param>
/// <param name="ThroughSequence">The newest event that had marked the boat.</param>
/// <param name="AssessedAt">When it was made.</param>
/// <param name="Finding">The finding.</param>
public sealed record StoredFinding(
    string Id,
    string Boat,
    string InputHash,
    int PriorVersion,
    string Method,
    long ThroughSequence,
    DateTimeOffset AssessedAt,
    BoatFinding Finding);

/// <summary>Which stored finding of a boat is the present one.</summary>
/// <param name="Id">The boat.</param>
/// <param name="FindingId">Id of the stored finding.</param>
public sealed record CurrentFinding(string Id, string FindingId);
