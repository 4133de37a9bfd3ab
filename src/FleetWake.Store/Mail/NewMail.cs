namespace FleetWake.Store.Mail;

/// <summary>A message ready to be queued.</summary>
/// <param name="Message">Key of the message within the operator.</param>
/// <param name="Recipient">Pseudonymous id of its one recipient.</param>
/// <param name="MessageId">Its Message-ID, the same at every attempt.</param>
/// <param name="Mime">The whole message, as it goes over the wire.</param>
public sealed record NewMail(string Message, string Recipient, string MessageId, byte[] Mime);

/// <summary>A message claimed for one attempt.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Message">Key of the message.</param>
/// <param name="Attempt">Number of this attempt, from 1.</param>
/// <param name="Unclear">How many attempts before it ended without a clear answer.</param>
/// <param name="Mime">The whole message.</param>
public sealed record ClaimedMail(string Operator, string Message, int Attempt, int Unclear, byte[] Mime);
