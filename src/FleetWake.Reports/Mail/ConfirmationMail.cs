using System.Net;
using FleetWake.Reports.Digests;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>Asks an address whether it wants a digest.</summary>
public sealed class ConfirmationMail(FleetOperators operators, Sender sender)
{
    /// <summary>Whether a question can be asked at all: its link needs an address of ours.</summary>
    public bool CanAsk => sender.PublicUrl is not null;

    /// <summary>Asks; null when the address is none, or no link can be given.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="address">The address, as typed.</param>
    /// <param name="digest">Which digest.</param>
    /// <param name="dock">Of which dock; null for every dock.</param>
    /// <param name="by">Pseudonymous id of who has it asked; null at the command line.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<Asked?> AskAsync(OperatorCard @operator, string address, string digest, string? dock, string? by, CancellationToken ct) =>
        CanAsk && Plain(address) is { } plain
            ? await operators.AskAsync(@operator, plain, digest, dock, by, (recipient, secret, now) => Compose(@operator, recipient, secret, now), ct)
            : null;

    /// <summary>The address within what was typed; null when it is none.</summary>
    public static string? Plain(string typed) =>
        typed.Trim() is { Length: > 2 and <= 254 } text && !text.Any(char.IsControl) && MailboxAddress.TryParse(text, out var mailbox) && mailbox.Address == text
        && mailbox.Address.Split('@') is [{ Length: > 0 and <= 64 }, { Length: > 2 } domain] && domain.Contains('.', StringComparison.Ordinal)
            ? mailbox.Address
            : null;

    private NewMail Compose(OperatorCard card, Recipient recipient, string secret, DateTimeOffset now)
    {
        var link = new Uri(sender.PublicUrl!, $"confirm/{secret}").AbsoluteUri;
        var what = $"the {recipient.Digest.Replace('-', ' ')} mail of {card.Name}{(recipient.Dock is { } dock ? $" for {dock}" : "")}";
        string[] lines =
        [
            $"Somebody at {card.Name} entered this address to receive {what}.",
            $"Do you want it? This link opens a page with a button, good for {FleetOperators.ConfirmWithin.TotalDays:0} days:",
            "If not, do nothing: without your yes nothing more is sent to you.",
        ];
        var text = $"{lines[0]}\n\n{lines[1]}\n{link}\n\n{lines[2]}\n";
        var html = "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>FleetWake</title></head><body style=\"font:16px/1.5 sans-serif;max-width:34rem;margin:16px;color:#1f2933;background:#ffffff\">"
            + $"<p>{WebUtility.HtmlEncode(lines[0])}</p><p>{WebUtility.HtmlEncode(lines[1])}<br><a href=\"{WebUtility.HtmlEncode(link)}\">{WebUtility.HtmlEncode(link)}</a></p><p>{WebUtility.HtmlEncode(lines[2])}</p></body></html>";
        var key = $"confirmation-{now:yyyyMMddHHmm}-{recipient.Id}";
        var digest = new RenderedDigest($"Do you want {what}?", html, text, [], UsedFallback: false);
        return Outgoing.Of(MailComposer.Compose(digest, sender.To(card, recipient, "confirmation", key, now)), key, recipient);
    }
}
