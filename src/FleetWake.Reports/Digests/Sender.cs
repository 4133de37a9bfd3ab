using FleetWake.Reports.Mail;
using FleetWake.Store.Operators;

namespace FleetWake.Reports.Digests;

/// <summary>Who digests come from.</summary>
/// <param name="Address">Address of the sender.</param>
/// <param name="PublicUrl">Https address of the web room; null when mails carry no unsubscribe link.</param>
/// <param name="ReplyTo">Where answers go that an operator has set no address of its own for; to the sender when null.</param>
public sealed record Sender(string Address, Uri? PublicUrl, string? ReplyTo = null)
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
        card.ReplyTo ?? ReplyTo,
        PublicUrl is null ? null : new Uri(PublicUrl, $"unsubscribe/{recipient.Token}"),
        date);
}
