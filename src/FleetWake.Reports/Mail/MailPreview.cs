using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>A message as a person can read it in a list of what went out.</summary>
/// <param name="From">Its sender.</param>
/// <param name="To">Its recipient.</param>
/// <param name="Subject">Its subject.</param>
/// <param name="Date">Its date.</param>
/// <param name="Text">Its text part, without the way out of the subscription: that link is the reader's alone.</param>
/// <param name="Pictures">How many pictures it holds.</param>
/// <param name="Attachments">Names of what is attached.</param>
public sealed record MailPreview(string From, string To, string Subject, DateTimeOffset Date, string Text, int Pictures, IReadOnlyList<string> Attachments)
{
    /// <summary>Reads a stored message; null when nothing of it is kept or it cannot be read.</summary>
    public static MailPreview? Of(byte[] mime)
    {
        if (mime.Length == 0) return null;
        try
        {
            using var bytes = new MemoryStream(mime, writable: false);
            var message = MimeMessage.Load(bytes);
            return new MailPreview(
                message.From.ToString(), message.To.ToString(), message.Subject ?? "", message.Date, WithoutWayOut(message),
                message.BodyParts.OfType<MimePart>().Count(p => p.ContentId is not null && p.ContentType.IsMimeType("image", "*")),
                [.. message.Attachments.Select(a => a.ContentDisposition?.FileName ?? a.ContentType.Name ?? "?")]);
        }
        catch (FormatException)
        {
            return null;
        }
    }

    private static string WithoutWayOut(MimeMessage message)
    {
        var text = message.TextBody ?? "";
        var link = message.Headers[HeaderId.ListUnsubscribe]?.Trim('<', '>', ' ');
        return link is { Length: > 0 } ? text.Replace(link, "…", StringComparison.Ordinal) : text;
    }
}
