using System.Security.Cryptography.X509Certificates;
using System.Text.RegularExpressions;
using FleetWake.Store.Mail;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>How the connection to a mail server is secured.</summary>
public enum SmtpSecurity
{
    /// <summary>Not at all: a server on the same machine.</summary>
    None,

    /// <summary>By STARTTLS; a server that does not offer it is not used.</summary>
    StartTls,

    /// <summary>From the first byte.</summary>
    Tls,
}

/// <summary>A mail server.</summary>
/// <param name="Host">Host name.</param>
/// <param name="Port">Port.</param>
/// <param name="Security">How the connection is secured.</param>
/// <param name="User">User name; null for none.</param>
/// <param name="Password">Password.</param>
/// <param name="Timeout">Longest wait for one answer of the server; the whole attempt may take three times that.</param>
public sealed record SmtpSettings(string Host, int Port, SmtpSecurity Security, string? User, string? Password, TimeSpan Timeout)
{
    /// <summary>Authorities of one's own, the only ones whose certificates are then taken; null for those that the system trusts.</summary>
    public X509Certificate2Collection? Authorities { get; init; }

    /// <summary>Where the token of an XOAUTH2 sign-in comes from; null for a sign-in by password.</summary>
    public MailToken? Token { get; init; }

    /// <summary>Address that reports of undeliverable mail go to (the envelope's sender); null for the sender of the message.</summary>
    public string? BouncesTo { get; init; }

    /// <summary>Without the password: a record in a log line must not give it away.</summary>
    public override string ToString() => $"{Host}:{Port} ({Security})";
}

/// <summary>
/// Sends by SMTP, a connection for each message. A refusal of the message (5xx) is final; a 4xx, a broken or refused
/// connection and a failed sign-in are tried again, since they speak of the server or the settings; and once the message
/// text has begun, anything but a clear answer is unclear. A server whose certificate does not hold gets nothing, neither
/// the sign-in nor the message.
/// </summary>
public sealed partial class SmtpPost(SmtpSettings settings) : IPost
{
    /// <inheritdoc/>
    public async Task<Delivery> SendAsync(MimeMessage message, CancellationToken cancellationToken)
    {
        var begun = new Begun();
        var connected = false;
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(settings.Timeout * 3);
        var certificate = new ServerCertificate(settings);
        using var client = new SmtpClient { Timeout = (int)settings.Timeout.TotalMilliseconds };
        certificate.Guard(client);
        string said;

        // Before the conversation is about a message, whatever goes wrong is about our own server, and all mail waits.
        Delivery.Deferred NotNow(string why) => new(Redaction.Of(why), connected ? Waits.Host : Waits.Everything);
        try
        {
            await client.ConnectAsync(settings.Host, settings.Port, Options(settings.Security), limit.Token);
            await SignInAsync(client, limit.Token);
            connected = true;
            said = await SendAsync(client, message, begun, limit.Token);
        }
        catch (SmtpCommandException e)
        {
            // A clear answer, also after the text: nothing unclear about it. A 5xx to the connection is not about the message.
            var answer = Redaction.Of($"{(int)e.StatusCode} {e.Message}");
            return !connected ? NotNow(answer)
                : (int)e.StatusCode >= 500 ? new Delivery.Refused(answer, IsAboutAddress(e))
                : new Delivery.Deferred(answer, (int)e.StatusCode is 421 or 451 ? Waits.Host : Waits.Message);
        }
        catch (OperationCanceledException) when (!begun.Yes)
        {
            cancellationToken.ThrowIfCancellationRequested();
            return NotNow("the server took too long to answer");
        }
        catch (Exception e) when (begun.Yes)
        {
            return new Delivery.Unclear($"after the message had begun: {Redaction.Of(e.Message)}");
        }
        catch (SslHandshakeException e)
        {
            return NotNow(certificate.WhyNot ?? $"no secured connection: {e.InnerException?.Message ?? e.Message}");
        }
        catch (AuthenticationException e)
        {
            settings.Token?.Forget();
            return NotNow(e.Message);
        }
        catch (Exception e) when (e is IOException or System.Net.Sockets.SocketException or TimeoutException or ProtocolException
            or ServiceNotConnectedException or NotSupportedException or TokenException)
        {
            return NotNow(e.Message);
        }

        await Leave(client, limit.Token);
        return new Delivery.Sent(Redaction.Of(said));
    }

    private async Task SignInAsync(SmtpClient client, CancellationToken ct)
    {
        if (settings.User is not { } user) return;
        if (settings.Token is { } token) await client.AuthenticateAsync(new SaslMechanismOAuth2(user, await token.GetAsync(ct)), ct);
        else await client.AuthenticateAsync(user, settings.Password ?? "", ct);
    }

    private Task<string> SendAsync(SmtpClient client, MimeMessage message, Begun begun, CancellationToken ct) => settings.BouncesTo is { } back
        ? client.SendAsync(message, MailboxAddress.Parse(back), message.To.Mailboxes, ct, begun)
        : client.SendAsync(message, ct, begun);

    /// <summary>
    /// Whether a refusal is about the recipient's address: its enhanced status says so (<see cref="AddressStatus"/>), whatever verb it answers but
    /// MAIL; where it tells none, RCPT refused, or 550 after the text.
    /// </summary>
    private static bool IsAboutAddress(SmtpCommandException e) => Enhanced().Match(e.Message) is { Success: true } status
        ? e.ErrorCode != SmtpErrorCode.SenderNotAccepted && AddressStatus.SaysGone(status.Value)
        : e.ErrorCode == SmtpErrorCode.RecipientNotAccepted || (e.ErrorCode == SmtpErrorCode.MessageNotAccepted && (int)e.StatusCode == 550);

    [GeneratedRegex(@"^5\.[0-9]{1,3}\.[0-9]{1,3}(?![0-9.])")]
    private static partial Regex Enhanced();

    // The message is taken; how the goodbye goes must not change that.
    private static async Task Leave(SmtpClient client, CancellationToken cancellationToken)
    {
        try
        {
            await client.DisconnectAsync(quit: true, cancellationToken);
        }
        catch (Exception e) when (e is IOException or ProtocolException or OperationCanceledException or CommandException or ServiceNotConnectedException or System.Net.Sockets.SocketException or TimeoutException)
        {
            // Nothing to do: disposing the client closes the connection.
        }
    }

    private static SecureSocketOptions Options(SmtpSecurity security) => security switch
    {
        SmtpSecurity.Tls => SecureSocketOptions.SslOnConnect,
        SmtpSecurity.StartTls => SecureSocketOptions.StartTls,
        _ => SecureSocketOptions.None,
    };

    /// <summary>Told by the first bytes of the text: before them, the server cannot have the message.</summary>
    private sealed class Begun : ITransferProgress
    {
        public bool Yes { get; private set; }

        public void Report(long bytesTransferred, long totalSize) => Yes = true;

        public void Report(long bytesTransferred) => Yes = true;
    }
}
