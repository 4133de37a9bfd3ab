using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mail;

/// <summary>A message to one recipient was planned.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Digest">What it is, e.g. <c>weekly-wear</c>.</param>
/// <param name="Period">Of which period, e.g. <c>2026-W47</c>.</param>
/// <param name="Recipient">Pseudonymous id of the one recipient.</param>
/// <param name="MessageId">Its Message-ID, the same at every attempt.</param>
/// <param name="Dock">Of which dock it is; null for every dock.</param>
/// <param name="AgainOf">The message that it repeats because a person asked for it; null for a first one.</param>
[StoredAs("mail_planned", 1)]
public sealed record MailPlanned(
    Entry Entry, string Digest, string Period, string Recipient, string MessageId, string? Dock = null, string? AgainOf = null) : IFact;

/// <summary>The message was written and waits to be sent.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Sha256">SHA-256 of its bytes before they are signed, lower-case hex.</param>
/// <param name="Bytes">How many they are [bytes].</param>
[StoredAs("mail_composed", 1)]
public sealed record MailComposed(Entry Entry, string Sha256, int Bytes) : IFact;
