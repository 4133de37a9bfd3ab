using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using MimeKit;
using MimeKit.Utils;

namespace FleetWake.Reports.Mail;

/// <summary>Sends a message again because a person asked for it.</summary>
public sealed class MailAgain(MailReading reading, MailResends resends)
{
    /// <summary>
    /// Sends it again. One that was not accepted is tried again as it is; one that was accepted goes as another message, for a
    /// mailbox may drop a second one of the same Message-ID unseen.
    /// </summary>
    /// <param name="operator">The operator.</param>
    /// <param name="message">The message.</param>
    /// <param name="by">Pseudonymous id of the person; null at the command line.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<Resend> SendAsync(OperatorCard @operator, string message, string? by, CancellationToken ct)
    {
        if (await reading.FindAsync(@operator.Id, message, ct) is not { } line) return Resend.Unknown;
        var can = await resends.LookAsync(@operator.Id, line, ct);
        if (can == Resend.Queued) return await resends.TryAgainAsync(@operator, message, by, ct) ? Resend.Queued : Resend.OnItsWay;
        if (can != Resend.AsAnother) return can;
        var mime = await reading.MimeAsync(@operator.Id, message, ct);
        if (mime.Length == 0) return Resend.NotKept;
        var key = await resends.KeyAsync(@operator.Id, message, ct);
        return await resends.AgainAsync(@operator, line, await RepeatAsync(@operator, line, key, mime, ct), by, ct) ? Resend.AsAnother : Resend.OnItsWay;
    }

    private static async Task<NewMail> RepeatAsync(OperatorCard @operator, MailLine line, string key, byte[] mime, CancellationToken ct)
    {
        using var bytes = new MemoryStream(mime, writable: false);
        var repeat = await MimeMessage.LoadAsync(bytes, ct);
        var domain = MimeUtils.ParseMessageId(repeat.MessageId ?? "")?.Split('@')[^1] ?? "localhost";
        repeat.MessageId = MessageIds.Of(@operator.Id, line.Digest ?? "", line.Period ?? "", $"{line.Recipient}/{key}", domain);
        return new NewMail(key, line.Recipient, repeat.MessageId, Outgoing.Bytes(repeat)) { Dock = line.Dock, Subject = line.Subject, Host = Outgoing.HostOf(repeat) };
    }
}
