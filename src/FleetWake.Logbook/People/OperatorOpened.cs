using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.People;

/// <summary>An operator began to keep its record here.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Zone">IANA zone of its office; digests go out by this clock.</param>
[StoredAs("operator_opened", 1)]
public sealed record OperatorOpened(Entry Entry, string Name, string Zone) : IFact;

/// <summary>Somebody began to receive a digest. The address itself lies in an erasable row.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Dock">Of which dock; null for every dock.</param>
[StoredAs("recipient_subscribed", 1)]
public sealed record RecipientSubscribed(Entry Entry, string Recipient, string Digest, string? Dock = null) : IFact;

/// <summary>Somebody no longer wants a digest.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="Digest">Which digest.</param>
[StoredAs("recipient_unsubscribed", 1)]
public sealed record RecipientUnsubscribed(Entry Entry, string Recipient, string Digest) : IFact;

/// <summary>A digest of one period went out. The key (operator, digest, dock, period) is unique, whatever clocks and nodes do.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Period">The period, e.g. <c>2026-W47</c>.</param>
/// <param name="Messages">The messages made for it, one per recipient.</param>
[StoredAs("digest_issued", 1)]
public sealed record DigestIssued(Entry Entry, string Digest, string Period, IReadOnlyList<string> Messages) : IFact
{
    /// <summary>The dock for whose readers it was; null for those of the whole fleet.</summary>
    public string? Dock { get; init; }
}

/// <summary>A digest's time passed while nothing ran, and a newer one went out instead of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Period">The period that has no digest, e.g. <c>2026-W45</c>.</param>
/// <param name="Instead">The period whose digest went out, e.g. <c>2026-W47</c>.</param>
[StoredAs("digest_passed_over", 1)]
public sealed record DigestPassedOver(Entry Entry, string Digest, string Period, string Instead) : IFact
{
    /// <summary>The dock for whose readers it was; null for those of the whole fleet.</summary>
    public string? Dock { get; init; }
}
