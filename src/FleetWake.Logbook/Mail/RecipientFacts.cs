using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mail;

/// <summary>An address was asked by mail whether it wants a digest. Nothing else is sent to it until it says so.</summary>
/// <param name="Entry">The stamp, which says who had it asked.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Dock">Of which dock; null for every dock.</param>
[StoredAs("recipient_asked", 1)]
public sealed record RecipientAsked(Entry Entry, string Recipient, string Digest, string? Dock = null) : IFact;

/// <summary>A server said that an address takes no mail; nothing is sent to it until a person lets it be tried again.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="Message">The message that told it.</param>
/// <param name="Why">What the server said, without the address.</param>
[StoredAs("recipient_takes_no_mail", 1)]
public sealed record RecipientTakesNoMail(Entry Entry, string Recipient, string Message, string Why) : IFact;

/// <summary>A person lets an address be tried again.</summary>
/// <param name="Entry">The stamp, which says who.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
[StoredAs("recipient_tried_again", 1)]
public sealed record RecipientTriedAgain(Entry Entry, string Recipient) : IFact;

/// <summary>A digest went out without a recipient whose address takes no mail.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Period">Of which period.</param>
[StoredAs("recipient_left_out", 1)]
public sealed record RecipientLeftOut(Entry Entry, string Recipient, string Digest, string Period) : IFact;

/// <summary>A digest went out without a recipient to whom no message of it could be written.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Period">Of which period.</param>
/// <param name="Why">What stood in the way, without the address.</param>
[StoredAs("recipient_not_written_to", 1)]
public sealed record RecipientNotWrittenTo(Entry Entry, string Recipient, string Digest, string Period, string Why) : IFact;
