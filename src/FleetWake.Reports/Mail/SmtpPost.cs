using System.Security.Cryptography.X509Certificates;
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

    /// <summary>Without the password: a record in a log line must not give it away.</summary>
    public override string ToString() => $"{Host}:{Port} ({Security})";
}

/// <summary>
/// Sends by SMTP, a connection for each message. A refusal of the message (5xx) is final; a 4xx, a broken or refused
/// connection and a failed sign-in are tried again, since they speak of the server or the settings; and once the message
/// text has begun, anything but a clear answer is unclear. A server whose certificate does not hold gets nothing, neither
/// the sign-in nor the message.
/// </summary>
public sealed class SmtpPost(SmtpSettings settings) : IPost
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
        try
        {
            await client.ConnectAsync(settings.Host, settings.Port, Options(settings.Security), limit.Token);
            if (settings.User is { } user) await client.AuthenticateAsync(user, settings.Password ?? "", limit.Token);
            connected = true;
            await client.SendAsync(message, limit.Token, begun);
        }
        catch (SmtpCommandException e)
        {
            // A clear answer, also after the text: nothing unclear about it. A 5xx to the connection is not about the message.
            var answer = $"{(int)e.StatusCode} {OneLine(e.Message)}";
            return connected && (int)e.StatusCode >= 500 ? new Delivery.Refused(answer) : new Delivery.Deferred(answer);
        }
        catch (OperationCanceledException) when (!begun.Yes)
        {
            cancellationToken.ThrowIfCancellationRequested();
            return new Delivery.Deferred("the server took too long to answer");
        }
        catch (Exception e) when (begun.Yes)
        {
            return new Delivery.Unclear($"after the message had begun: {OneLine(e.Message)}");
        }
        catch (SslHandshakeException e)
        {
            return new Delivery.Deferred(certificate.WhyNot ?? $"no secured connection: {OneLine(e.InnerException?.Message ?? e.Message)}");
        }
        catch (Exception e) when (e is IOException or System.Net.Sockets.SocketException or TimeoutException or ProtocolException
            or AuthenticationException or ServiceNotConnectedException or NotSupportedException)
        {
            return new Delivery.Deferred(OneLine(e.Message));
        }

        await Leave(client, limit.Token);
        return new Delivery.Sent();
    }

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

    private static string OneLine(string said)
    {
        var line = string.Concat(said.Select(c => char.IsControl(c) ? ' ' : c)).Trim();
        return line.Length > 300 ? line[..300] : line;
    }

    /// <summary>Told by the first bytes of the text: before them, the server cannot have the message.</summary>
    private sealed class Begun : ITransferProgress
    {
        public bool Yes { get; private set; }

        public void Report(long bytesTransferred, long totalSize) => Yes = true;

        public void Report(long bytesTransferred) => Yes = true;
    }
}
