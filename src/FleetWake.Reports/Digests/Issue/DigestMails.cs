using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using Microsoft.Extensions.Logging;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>Makes the messages of an edition, one a reader.</summary>
public sealed partial class DigestMails(Sender sender, TimeProvider time, ILogger<DigestMails> log)
{
    /// <summary>The messages, those left out whose address cannot stand in one.</summary>
    public IReadOnlyList<NewMail> Of(OperatorCard card, string digest, string period, IReadOnlyList<Recipient> readers, RenderedDigest rendered) =>
        [.. readers.Select(r => Mail(card, r, digest, period, rendered)).OfType<NewMail>()];

    /// <summary>Ids of the readers to whom none of the messages goes.</summary>
    public static IReadOnlyList<string> Unwritten(IReadOnlyList<Recipient> readers, IReadOnlyList<NewMail> messages) =>
        [.. readers.Select(r => r.Id).Except(messages.Select(m => m.Recipient), StringComparer.Ordinal)];

    private NewMail? Mail(OperatorCard card, Recipient recipient, string digest, string period, RenderedDigest rendered)
    {
        try
        {
            var message = MailComposer.Compose(rendered, sender.To(card, recipient, digest, period, time.GetUtcNow()));
            return Outgoing.Of(message, $"{digest}-{period}-{recipient.Id}", recipient);
        }
        catch (ArgumentException e)
        {
            // An address that cannot stand in a message must not keep the others from theirs.
            LogUnaddressed(e, recipient.Id, card.Id);
            return null;
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "No message can be made for recipient {Recipient} of {Operator}: its address does not stand in a header.")]
    private partial void LogUnaddressed(Exception e, string recipient, string @operator);
}

/// <summary>How digests are issued where their schedule says nothing else.</summary>
/// <param name="Missed">What becomes of those that were missed.</param>
public sealed record IssueSettings(Logbook.Schedules.MissedRule Missed);
