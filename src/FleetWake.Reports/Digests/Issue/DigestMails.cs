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

    private NewMail? Mail(OperatorCard card, Recipient recipient, string digest, string period, RenderedDigest rendered)
    {
        try
        {
            var message = MailComposer.Compose(rendered, sender.To(card, recipient, digest, period, time.GetUtcNow()));
            using var bytes = new MemoryStream();
            message.WriteTo(bytes);
            return new NewMail($"{digest}-{period}-{recipient.Id}", recipient.Id, message.MessageId!, bytes.ToArray());
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

/// <summary>Who digests come from.</summary>
/// <param name="Address">Address of the sender.</param>
/// <param name="PublicUrl">Https address of the web room; null when mails carry no unsubscribe link.</param>
public sealed record Sender(string Address, Uri? PublicUrl)
{
    /// <summary>The addressing of one message.</summary>
    public MailAddressing To(OperatorCard card, Recipient recipient, string digest, string period, DateTimeOffset date) => new(
        card.Id,
        card.Name,
        digest,
        period,
        recipient.Id,
        "",
        recipient.Address,
        $"{card.Name} (FleetWake)",
        Address,
        null,
        PublicUrl is null ? null : new Uri(PublicUrl, $"unsubscribe/{recipient.Token}"),
        date);
}

/// <summary>How digests are issued where their schedule says nothing else.</summary>
/// <param name="Missed">What becomes of those that were missed.</param>
public sealed record IssueSettings(Logbook.Schedules.MissedRule Missed);
