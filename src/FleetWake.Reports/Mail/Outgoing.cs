using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>A composed message as the ledger takes it.</summary>
public static class Outgoing
{
    /// <summary>The message of a digest to one recipient.</summary>
    /// <param name="message">The message.</param>
    /// <param name="key">Key of the message within the operator.</param>
    /// <param name="recipient">Its one recipient.</param>
    public static NewMail Of(MimeMessage message, string key, Recipient recipient) =>
        new(key, recipient.Id, message.MessageId!, Bytes(message)) { Dock = recipient.Dock, Subject = message.Subject, Host = HostOf(message) };

    /// <summary>The domain that a message goes to, lower case; empty when it goes to nobody.</summary>
    public static string HostOf(MimeMessage message) => message.To.Mailboxes.FirstOrDefault()?.Domain.ToLowerInvariant() ?? "";

    internal static byte[] Bytes(MimeMessage message)
    {
        using var bytes = new MemoryStream();
        message.WriteTo(bytes);
        return bytes.ToArray();
    }
}
