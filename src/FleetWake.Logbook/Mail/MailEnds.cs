using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mail;

/// <summary>A message is not tried any more, though nobody refused it for good.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Attempt">Number of the last attempt.</param>
/// <param name="Why">What stood in the way.</param>
[StoredAs("mail_given_up", 1)]
public sealed record MailGivenUp(Entry Entry, int Attempt, string Why) : IFact;

/// <summary>A message that was accepted came back: a server further on could not deliver it (RFC 3464, action <c>failed</c>).</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Status">Status of RFC 3463, e.g. <c>5.1.1</c>; null when none was told.</param>
/// <param name="Why">What that server said, without the address.</param>
[StoredAs("mail_bounced", 1)]
public sealed record MailBounced(Entry Entry, string? Status, string Why) : IFact;

/// <summary>A server further on reported that it has not delivered the message yet and goes on trying (RFC 3464, action <c>delayed</c>).</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Status">Status of RFC 3463; null when none was told.</param>
/// <param name="Why">What that server said, without the address.</param>
[StoredAs("mail_delayed", 1)]
public sealed record MailDelayed(Entry Entry, string? Status, string Why) : IFact;

/// <summary>A message that waited is not sent: its reader left.</summary>
/// <param name="Entry">The stamp.</param>
[StoredAs("mail_unsubscribed", 1)]
public sealed record MailUnsubscribed(Entry Entry) : IFact;

/// <summary>A person asked for a message to be sent again.</summary>
/// <param name="Entry">The stamp, which says who.</param>
/// <param name="As">The message that repeats it, when it had been accepted; null when this very message is tried again.</param>
[StoredAs("mail_resend_asked", 1)]
public sealed record MailResendAsked(Entry Entry, string? As = null) : IFact;
