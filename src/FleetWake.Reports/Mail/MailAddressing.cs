namespace FleetWake.Reports.Mail;

/// <summary>Who sends one digest to whom. One recipient a message: a refused one must not take the others down.</summary>
/// <param name="Operator">The operator's id, for the Message-ID and the List-Id.</param>
/// <param name="OperatorName">The operator's name.</param>
/// <param name="Digest">Which digest, e.g. <c>weekly-wear</c>.</param>
/// <param name="Period">Which period, e.g. <c>2026-W47</c>.</param>
/// <param name="Recipient">Pseudonymous id of the recipient.</param>
/// <param name="ToName">The recipient's name; may be empty.</param>
/// <param name="ToAddress">The recipient's address.</param>
/// <param name="FromName">The sender's name.</param>
/// <param name="FromAddress">The sender's address; its domain also ends the Message-ID.</param>
/// <param name="ReplyTo">Where an answer goes; to the sender when null.</param>
/// <param name="Unsubscribe">Address that ends the subscription by a POST without signing in. Only https is taken; no header without it.</param>
/// <param name="Date">Date of the message.</param>
public sealed record MailAddressing(
    string Operator,
    string OperatorName,
    string Digest,
    string Period,
    string Recipient,
    string ToName,
    string ToAddress,
    string FromName,
    string FromAddress,
    string? ReplyTo,
    Uri? Unsubscribe,
    DateTimeOffset Date);
