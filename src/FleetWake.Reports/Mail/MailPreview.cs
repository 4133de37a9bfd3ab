using System.Text.RegularExpressions;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>A message as a person can read it in a list of what went out.</summary>
/// <param name="From">Its sender.</param>
/// <param name="To">Its recipient.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="Date">Its date.</param>
/// <param name="Text">Its text part, without the ways into and out of the subscription: those links are the reader's alone.</param>
/// <param name="Pictures">How many pictures it holds.</param>
/// <param name="Attachments">Names of what is attached.</param>
public sealed partial record MailPreview(string From, string To, string Subject, DateTimeOffset Date, string Text, int Pictures, IReadOnlyList<string> Attachments)
{
    /// <summary>
    /// Reads a stored message; null when it is the question whether an address wants a digest. Its link is the only proof that it was answered by
    /// who reads that mailbox: who had it asked must never see it.
    /// </summary>
    /// <param name="line">The message.</param>
    /// <param name="mime">Its bytes.</param>
    public static MailPreview? Of(MailLine line, byte[] mime) => line.Digest == DigestNames.Confirmation ? null : Of(mime);

    /// <summary>Reads a stored message; null when nothing of it is kept or it cannot be read.</summary>
    public static MailPreview? Of(byte[] mime)
    {
        if (mime.Length == 0) return null;
        try
        {
            using var bytes = new MemoryStream(mime, writable: false);
            var message = MimeMessage.Load(bytes);
            return new MailPreview(
                message.From.ToString(), message.To.ToString(), message.Subject ?? "", message.Date, WithoutLinks(message),
                message.BodyParts.OfType<MimePart>().Count(p => p.ContentId is not null && p.ContentType.IsMimeType("image", "*")),
                [.. message.Attachments.Select(a => a.ContentDisposition?.FileName ?? a.ContentType.Name ?? "?")]);
        }
        catch (FormatException)
        {
            return null;
        }
    }

    // Whoever follows such a link acts as the reader: it is shown to nobody else, however the text holds it.
    [GeneratedRegex(@"\S*/(?:confirm|unsubscribe)/\S*", RegexOptions.IgnoreCase | RegexOptions.NonBacktracking)]
    private static partial Regex WayInOrOut();

    private static string WithoutLinks(MimeMessage message)
    {
        var text = message.TextBody ?? "";
        var link = message.Headers[HeaderId.ListUnsubscribe]?.Trim('<', '>', ' ');
        return WayInOrOut().Replace(link is { Length: > 0 } ? text.Replace(link, "…", StringComparison.Ordinal) : text, "…");
    }
}
