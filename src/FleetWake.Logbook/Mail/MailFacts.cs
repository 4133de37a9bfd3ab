using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mail;

/// <summary>A message was written and waits to be sent. Of earlier versions; <see cref="MailPlanned"/> and <see cref="MailComposed"/> say more.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Recipient">Pseudonymous id of the one recipient.</param>
/// <param name="MessageId">Its Message-ID, the same at every attempt.</param>
[StoredAs("mail_queued", 1)]
public sealed record MailQueued(Entry Entry, string Recipient, string MessageId) : IFact;

/// <summary>An attempt begins; recorded before anything is sent.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Attempt">Number of the attempt, from 1.</param>
[StoredAs("mail_attempted", 1)]
public sealed record MailAttempted(Entry Entry, int Attempt) : IFact;

/// <summary>The server, or the pickup folder, took the message.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Attempt">Number of the attempt.</param>
/// <param name="Said">What the server answered, by which its own log knows the message; null when nothing.</param>
[StoredAs("mail_sent", 1)]
public sealed record MailSent(Entry Entry, int Attempt, string? Said = null) : IFact;

/// <summary>An attempt failed before the message was handed over; it is tried again later.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Attempt">Number of the attempt.</param>
/// <param name="Why">What the server said.</param>
[StoredAs("mail_deferred", 1)]
public sealed record MailDeferred(Entry Entry, int Attempt, string Why) : IFact;

/// <summary>The server may or may not have the message: the connection broke after it began to take it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Attempt">Number of the attempt.</param>
/// <param name="Why">What happened.</param>
[StoredAs("mail_unclear", 1)]
public sealed record MailUnclear(Entry Entry, int Attempt, string Why) : IFact;

/// <summary>The server refused the message for good; it is not tried again.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Attempt">Number of the attempt.</param>
/// <param name="Why">What the server said.</param>
[StoredAs("mail_refused", 1)]
public sealed record MailRefused(Entry Entry, int Attempt, string Why) : IFact;
