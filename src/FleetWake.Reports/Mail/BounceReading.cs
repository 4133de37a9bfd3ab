using FleetWake.Store.Mail;
using MimeKit;
using MimeKit.Utils;

namespace FleetWake.Reports.Mail;

/// <summary>Reads reports of what became of a message (delivery status notifications, RFC 3464 within RFC 6522). What is none says nothing.</summary>
public static class BounceReading
{
    /// <summary>Recipients of one report at the most: ours have one each.</summary>
    private const int MostRecipients = 20;

    private const int LongestAddress = 254;

    /// <summary>The reports in a message; none when it is no such report or cannot be read.</summary>
    public static IReadOnlyList<BounceReport> Of(byte[] mime)
    {
        try
        {
            using var bytes = new MemoryStream(mime, writable: false);
            return Of(MimeMessage.Load(bytes));
        }
        catch (FormatException)
        {
            return [];
        }
    }

    /// <summary>The reports in a message.</summary>
    public static IReadOnlyList<BounceReport> Of(MimeMessage message)
    {
        if (message.BodyParts.OfType<MessageDeliveryStatus>().FirstOrDefault() is not { } status) return [];

        // The first group is about the message, each other one about a recipient (RFC 3464, 2.1).
        var groups = status.StatusGroups;
        var id = IdOf(message) ?? (groups.Count > 0 ? MessageIdIn(groups[0]["Original-Envelope-Id"]) : null);

        // Whatever anybody answers holds these: enough to note something, and not to end somebody's mail.
        var answered = id is null ? Clean(message.InReplyTo ?? message.References.LastOrDefault()) : null;
        return [.. groups.Skip(1).Take(MostRecipients).Select(group => Read(group, id ?? answered, answered is not null)).OfType<BounceReport>()];
    }

    private static BounceReport? Read(HeaderList group, string? id, bool byReply)
    {
        var failed = Word(group["Action"]) switch { "failed" => true, "delayed" => (bool?)false, _ => null };
        if (failed is not { } gaveUp) return null;
        var status = Word(group["Status"]) is { } told && told.Split('.') is [[>= '2' and <= '5'], { Length: > 0 and <= 3 } subject, { Length: > 0 and <= 3 } detail] && (subject + detail).All(char.IsAsciiDigit) ? told : null;
        var (first, last) = (AddressIn(group["Original-Recipient"]), AddressIn(group["Final-Recipient"]));
        return new BounceReport(id, first ?? last, gaveUp, status, Redaction.Of(AfterType(group["Diagnostic-Code"]) ?? "no reason was told")) { LastRecipient = first is null ? null : last, ByReply = byReply };
    }

    /// <summary>Message-ID of the message that came back: from what of it is enclosed.</summary>
    private static string? IdOf(MimeMessage message)
    {
        if (message.BodyParts.OfType<MessagePart>().Select(p => Clean(p.Message?.MessageId)).OfType<string>().FirstOrDefault() is { } whole) return whole;
        foreach (var part in message.BodyParts.OfType<MimePart>().Where(p => p.ContentType.IsMimeType("text", "rfc822-headers") && p.Content is not null))
        {
            using var decoded = new MemoryStream();
            part.Content!.DecodeTo(decoded);
            decoded.Position = 0;
            try
            {
                if (MessageIdIn(HeaderList.Load(decoded)[HeaderId.MessageId]) is { } named) return named;
            }
            catch (FormatException)
            {
                // Headers that are none say nothing.
            }
        }

        return null;
    }

    private static string? MessageIdIn(string? text) => text is null ? null : Clean(MimeUtils.ParseMessageId(text));

    // No id and no address of ours holds such a thing, and the database takes no NUL.
    private static string? Clean(string? text) => text is { Length: > 0 } && !text.Any(char.IsControl) ? text : null;

    private static string? Word(string? value) => value?.Split(' ', ';', '(')[0].Trim().ToLowerInvariant() is { Length: > 0 } word ? word : null;

    private static string? AfterType(string? value) => value?.Split(';', 2) is [_, var rest] && rest.Trim() is { Length: > 0 } said ? said : null;

    private static string? AddressIn(string? value) => AfterType(value)?.Trim('<', '>', ' ') is { Length: > 2 and <= LongestAddress } address && address.Contains('@', StringComparison.Ordinal) ? Clean(address) : null;
}
