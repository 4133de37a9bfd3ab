using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Quarantine;

/// <summary>An entry that a revoked phone brought, with what became of it.</summary>
/// <param name="Entry">The entry id.</param>
/// <param name="Kind">Kind of the record.</param>
/// <param name="Raw">The record as sent.</param>
/// <param name="Device">The phone.</param>
/// <param name="ReceivedAt">When it came.</param>
/// <param name="SentAt">The phone's clock then.</param>
/// <param name="State">What became of it.</param>
/// <param name="DecidedAt">When somebody decided.</param>
/// <param name="DecidedBy">Who.</param>
/// <param name="Refusal">Why it could not be let through, the last time that somebody tried.</param>
/// <param name="ReleaseEntry">Entry id of the record that it was let through, made ahead so that the record is made once.</param>
public sealed record KeptEntry(
    Guid Entry, string Kind, string Raw, string Device, DateTimeOffset ReceivedAt, DateTimeOffset? SentAt, KeptState State,
    DateTimeOffset? DecidedAt, string? DecidedBy, string? Refusal, Guid ReleaseEntry)
{
    /// <summary>How it came: it is judged by the clock of then, whenever it is let through.</summary>
    public Arrival Arrival => new(Device, ReceivedAt, SentAt);
}

/// <summary>What became of an entry that was kept back.</summary>
public enum KeptState
{
    /// <summary>It waits for a person.</summary>
    Waiting,

    /// <summary>It was let through and counts.</summary>
    Released,

    /// <summary>Somebody left it out. It stays here, and can still be let through.</summary>
    LeftOut,
}
