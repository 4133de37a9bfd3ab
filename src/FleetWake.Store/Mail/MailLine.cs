using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Mail;

/// <summary>A message as lists show it.</summary>
/// <param name="Message">Its key within the operator.</param>
/// <param name="Digest">What it is, e.g. <c>weekly-wear</c>; null for one of an earlier version.</param>
/// <param name="Period">Of which period, e.g. <c>2026-W47</c>.</param>
/// <param name="Dock">Of which dock; null for every dock.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="Recipient">Pseudonymous id of its one recipient.</param>
/// <param name="State">Where it stands: queued, sending, deferred, unclear, sent, refused, given_up, bounced, unsubscribed.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="Unclear">How many of these ended without a clear answer: as many more copies may have arrived.</param>
/// <param name="IssuedAt">When it was queued.</param>
/// <param name="NextAt">When it is tried next; null when it is settled or on its way.</param>
/// <param name="SettledAt">When it was settled.</param>
/// <param name="Why">What a server said last, when it did not take it.</param>
/// <param name="MessageId">Its Message-ID.</param>
/// <param name="AgainOf">The message that it repeats because a person asked for it.</param>
/// <param name="Kept">Whether its text is still kept, so that it can be read and sent again.</param>
public sealed record MailLine(
    string Message, string? Digest, string? Period, string? Dock, string? Subject, string Recipient, string State, int Attempts, int Unclear,
    DateTimeOffset IssuedAt, DateTimeOffset? NextAt, DateTimeOffset? SettledAt, string? Why, string? MessageId, string? AgainOf, bool Kept);

/// <summary>Which messages a list is of; null for whatever.</summary>
/// <param name="State">Only in this state.</param>
/// <param name="Digest">Only of this digest.</param>
/// <param name="Dock">Only of this dock.</param>
/// <param name="Recipient">Only to this recipient.</param>
/// <param name="Unclear">Only those of which an attempt ended without a clear answer.</param>
public sealed record MailFilter(string? State = null, string? Digest = null, string? Dock = null, string? Recipient = null, bool Unclear = false);

/// <summary>One thing that became of a message.</summary>
/// <param name="Fact">Stored name of the fact, e.g. <c>mail_attempted</c>.</param>
/// <param name="At">When.</param>
/// <param name="By">Who recorded it: <c>fleetwake</c>, or a person's id.</param>
/// <param name="Attempt">Number of the attempt, where it is of one.</param>
/// <param name="Why">What was said.</param>
public sealed record MailStep(string Fact, DateTimeOffset At, string By, int? Attempt, string? Why)
{
    internal static MailStep Of(IFact fact) => new(
        LogbookJson.StoredNames[fact.GetType()], fact.Entry.ReceivedAt, fact.Entry.By,
        fact switch
        {
            Logbook.Mail.MailAttempted f => f.Attempt,
            Logbook.Mail.MailSent f => f.Attempt,
            Logbook.Mail.MailDeferred f => f.Attempt,
            Logbook.Mail.MailUnclear f => f.Attempt,
            Logbook.Mail.MailRefused f => f.Attempt,
            Logbook.Mail.MailGivenUp f => f.Attempt,
            _ => null,
        },
        fact switch
        {
            Logbook.Mail.MailPlanned f => f.AgainOf,
            Logbook.Mail.MailComposed f => f.Sha256,
            Logbook.Mail.MailSent f => f.Said,
            Logbook.Mail.MailDeferred f => f.Why,
            Logbook.Mail.MailUnclear f => f.Why,
            Logbook.Mail.MailRefused f => f.Why,
            Logbook.Mail.MailGivenUp f => f.Why,
            Logbook.Mail.MailBounced f => f.Status is null ? f.Why : $"{f.Status} {f.Why}",
            Logbook.Mail.MailDelayed f => f.Status is null ? f.Why : $"{f.Status} {f.Why}",
            Logbook.Mail.MailResendAsked f => f.As,
            _ => null,
        });
}
