using System.Net;
using System.Text;
using FleetWake.Reports.Digests;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>Makes a message of a rendered digest. The same digest and addressing give the same bytes.</summary>
public static class MailComposer
{
    /// <summary>The message. Throws when a name or address could break a header.</summary>
    public static MimeMessage Compose(RenderedDigest digest, MailAddressing to)
    {
        Check(digest.Subject, "subject");
        foreach (var (value, name) in new[] { (to.Operator, "operator"), (to.OperatorName, "operator name"), (to.Digest, "digest"), (to.Period, "period"), (to.Recipient, "recipient") })
            Check(value, name);
        var sender = Address(to.FromName, to.FromAddress, "sender");
        var id = MessageIds.Of(to.Operator, to.Digest, to.Period, to.Recipient, sender.Domain);
        var message = new MimeMessage { MessageId = id, Date = to.Date, Subject = digest.Subject };
        message.From.Add(sender);
        message.To.Add(Address(to.ToName, to.ToAddress, "recipient"));
        if (to.ReplyTo is { Length: > 0 } reply) message.ReplyTo.Add(Address(to.OperatorName, reply, "reply-to"));

        // No holiday notes back, and a name by which a mail program can sort or mute the list.
        message.Headers.Add("Auto-Submitted", "auto-generated");
        message.Headers.Add("List-Id", $"{Slug(to.OperatorName)} <{Slug(to.Digest)}.{Slug(to.Operator)}.{sender.Domain}>");
        var unsubscribe = to.Unsubscribe is { IsAbsoluteUri: true, Scheme: "https" } uri ? uri : null;
        if (unsubscribe is not null)
        {
            message.Headers.Add("List-Unsubscribe", $"<{unsubscribe.AbsoluteUri}>");
            message.Headers.Add("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
        }

        message.Body = Attached(Body(digest, unsubscribe, id.Split('@')[0]), digest.Attachments, id.Split('@')[0]);
        return message;
    }

    private static MultipartAlternative Body(RenderedDigest digest, Uri? unsubscribe, string id)
    {
        var text = new TextPart("plain") { ContentTransferEncoding = ContentEncoding.QuotedPrintable };
        text.SetText(Encoding.UTF8, unsubscribe is null ? digest.Text : $"{digest.Text}\nTo stop these messages:\n{unsubscribe.AbsoluteUri}\n");
        var html = new TextPart("html") { ContentTransferEncoding = ContentEncoding.QuotedPrintable };
        html.SetText(Encoding.UTF8, unsubscribe is null ? digest.Html : WithFooter(digest.Html, unsubscribe));

        // Boundaries from the Message-ID instead of chance: a second attempt sends the very same message.
        var alternative = new MultipartAlternative { text };
        alternative.ContentType.Boundary = $"alt-{id}";
        if (digest.Pictures.Count == 0)
        {
            alternative.Add(html);
            return alternative;
        }

        var related = new MultipartRelated { html };
        related.ContentType.Boundary = $"rel-{id}";
        foreach (var picture in digest.Pictures)
        {
            related.Add(new MimePart("image", "png")
            {
                ContentId = picture.ContentId,
                Content = new MimeContent(new MemoryStream(picture.Png, writable: false)),
                ContentDisposition = new ContentDisposition(ContentDisposition.Inline) { FileName = picture.FileName },
                ContentTransferEncoding = ContentEncoding.Base64,
            });
        }

        alternative.Add(related);
        return alternative;
    }

    private static MimeEntity Attached(MimeEntity body, IReadOnlyList<DigestAttachment> files, string id)
    {
        if (files.Count == 0) return body;
        var mixed = new Multipart("mixed") { body };
        mixed.Boundary = $"mix-{id}";
        foreach (var file in files)
        {
            mixed.Add(new MimePart(ContentType.Parse(file.MediaType))
            {
                Content = new MimeContent(new MemoryStream(file.Bytes, writable: false)),
                ContentDisposition = new ContentDisposition(ContentDisposition.Attachment) { FileName = $"{SafeName.Of(Path.GetFileNameWithoutExtension(file.FileName), 80)}.{SafeName.Of(Path.GetExtension(file.FileName).TrimStart('.'), 10)}" },
                ContentTransferEncoding = ContentEncoding.Base64,
            });
        }

        return mixed;
    }

    // Set here, not by the template: the way out of a subscription must not depend on anyone's layout.
    private static string WithFooter(string html, Uri unsubscribe)
    {
        var footer = $"<p style=\"margin:16px;font:13px sans-serif;color:#7b8794\"><a href=\"{WebUtility.HtmlEncode(unsubscribe.AbsoluteUri)}\" style=\"color:#7b8794\">Stop these messages</a></p>";
        var end = html.LastIndexOf("</body>", StringComparison.OrdinalIgnoreCase);
        return end < 0 ? html + footer : html.Insert(end, footer);
    }

    private static MailboxAddress Address(string name, string address, string what)
    {
        Check(name, $"{what} name");
        Check(address, $"{what} address");
        if (!MailboxAddress.TryParse(address, out var parsed) || parsed.Address != address || parsed.Domain.Length == 0)
            throw new ArgumentException($"The {what} address is not a plain mail address.", nameof(address));
        return new MailboxAddress(Encoding.UTF8, name, address);
    }

    private static void Check(string value, string what)
    {
        if (value.Any(char.IsControl)) throw new ArgumentException($"The {what} holds a line break or another control character.", nameof(value));
    }

    private static string Slug(string value) => SafeName.Of(value, 60);
}
