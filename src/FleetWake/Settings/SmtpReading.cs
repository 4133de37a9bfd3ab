using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using FleetWake.Reports.Mail;
using Microsoft.Extensions.Configuration;

namespace FleetWake.Settings;

/// <summary>Reads how to reach the mail server.</summary>
internal static class SmtpReading
{
    private static readonly string[] WithHost = ["SMTP_PORT", "SMTP_SECURITY", "SMTP_CA", "SMTP_USER", "SMTP_PASSWORD", "SMTP_TOKEN_URL", "SMTP_TOKEN_CLIENT", "SMTP_TOKEN_SECRET", "SMTP_TOKEN_SCOPE", "SMTP_TOKEN_REFRESH"];

    public static SmtpSettings? From(IConfiguration set)
    {
        if (FleetSettings.Text(set, "SMTP_HOST") is not { } host)
        {
            // Mail would go into a folder that nobody looks in.
            return Array.Find(WithHost, name => FleetSettings.Text(set, name) is not null) is { } alone
                ? throw new SettingsException($"FLEETWAKE_{alone} is set, and FLEETWAKE_SMTP_HOST is not: name the mail server, or take FLEETWAKE_{alone} away.")
                : null;
        }

        var port = FleetSettings.Text(set, "SMTP_PORT") is not { } text ? 587
            : int.TryParse(text, out var number) && number is > 0 and < 65536 ? number
            : throw new SettingsException($"FLEETWAKE_SMTP_PORT is \"{text}\": give a port, 1 to 65535.");
        var security = (FleetSettings.Text(set, "SMTP_SECURITY") ?? "starttls").ToLowerInvariant() switch
        {
            "none" => SmtpSecurity.None,
            "starttls" => SmtpSecurity.StartTls,
            "tls" => SmtpSecurity.Tls,
            var other => throw new SettingsException($"FLEETWAKE_SMTP_SECURITY is \"{other}\": give none, starttls or tls."),
        };
        var user = FleetSettings.Text(set, "SMTP_USER");
        if (security == SmtpSecurity.None && user is not null && !IsThisMachine(host))
            throw new SettingsException($"FLEETWAKE_SMTP_SECURITY is none, and the password would go to {host} for anybody on the way to read: give starttls or tls, or take FLEETWAKE_SMTP_USER away.");
        return new SmtpSettings(host, port, security, user, FleetSettings.Text(set, "SMTP_PASSWORD"), TimeSpan.FromSeconds(30))
        {
            Authorities = Authorities(FleetSettings.Text(set, "SMTP_CA")),
            Token = Token(set, user),
        };
    }

    private static MailToken? Token(IConfiguration set, string? user)
    {
        if (FleetSettings.Text(set, "SMTP_TOKEN_URL") is not { } url)
        {
            return Array.Find(WithHost, name => name.StartsWith("SMTP_TOKEN_", StringComparison.Ordinal) && FleetSettings.Text(set, name) is not null) is { } alone
                ? throw new SettingsException($"FLEETWAKE_{alone} is set, and FLEETWAKE_SMTP_TOKEN_URL is not: name the address that gives tokens, or take FLEETWAKE_{alone} away.")
                : null;
        }

        if (!Uri.TryCreate(url, UriKind.Absolute, out var endpoint) || (endpoint.Scheme != Uri.UriSchemeHttps && !(endpoint.Scheme == Uri.UriSchemeHttp && endpoint.IsLoopback)))
            throw new SettingsException($"FLEETWAKE_SMTP_TOKEN_URL is \"{url}\": give an https address, for the secret goes there.");
        if (user is null) throw new SettingsException("FLEETWAKE_SMTP_TOKEN_URL is set, and FLEETWAKE_SMTP_USER is not: name the mailbox that signs in.");
        if (FleetSettings.Text(set, "SMTP_PASSWORD") is not null) throw new SettingsException("FLEETWAKE_SMTP_PASSWORD and FLEETWAKE_SMTP_TOKEN_URL are both set: give one way to sign in.");
        var client = FleetSettings.Text(set, "SMTP_TOKEN_CLIENT") ?? throw new SettingsException("FLEETWAKE_SMTP_TOKEN_URL is set, and FLEETWAKE_SMTP_TOKEN_CLIENT is not: give the id of the client.");
        var settings = new TokenSettings(endpoint, client, FleetSettings.Text(set, "SMTP_TOKEN_SECRET"), FleetSettings.Text(set, "SMTP_TOKEN_SCOPE"), FleetSettings.Text(set, "SMTP_TOKEN_REFRESH"));
        return new MailToken(settings, new HttpClient { Timeout = TimeSpan.FromSeconds(30) }, TimeProvider.System);
    }

    private static X509Certificate2Collection? Authorities(string? file)
    {
        if (file is null) return null;
        var read = new X509Certificate2Collection();
        try
        {
            read.ImportFromPemFile(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new SettingsException($"FLEETWAKE_SMTP_CA is \"{file}\", which cannot be read: {e.Message}");
        }

        return read.Count > 0 ? read : throw new SettingsException($"FLEETWAKE_SMTP_CA is \"{file}\", and there is no certificate in it: give a PEM file (-----BEGIN CERTIFICATE-----).");
    }

    private static bool IsThisMachine(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));
}
