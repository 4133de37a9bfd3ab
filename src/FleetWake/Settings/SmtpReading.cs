using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using FleetWake.Reports.Mail;
using Microsoft.Extensions.Configuration;

namespace FleetWake.Settings;

/// <summary>Reads how to reach the mail server.</summary>
internal static class SmtpReading
{
    private static readonly string[] WithHost = ["SMTP_PORT", "SMTP_SECURITY", "SMTP_CA", "SMTP_USER", "SMTP_PASSWORD"];

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
        };
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
