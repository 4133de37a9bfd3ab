using System.Globalization;
using System.Security.Cryptography;
using FleetWake.Reports.Mail;
using Microsoft.Extensions.Configuration;

namespace FleetWake.Settings;

/// <summary>How mail goes out.</summary>
/// <param name="From">Sender.</param>
/// <param name="Folder">Pickup folder, used without SMTP.</param>
/// <param name="Smtp">Mail server, when one is set.</param>
public sealed record MailSettings(string From, string Folder, SmtpSettings? Smtp)
{
    /// <summary>How long the text of a message is kept when it is settled.</summary>
    public TimeSpan Kept { get; init; } = Store.Mail.MailKeeping.Usual.For;

    /// <summary>How messages are sent side by side.</summary>
    public SendingSettings Sending { get; init; } = SendingSettings.Usual;

    /// <summary>Keys that sign what goes out; null for none.</summary>
    public MailSigning? Signing { get; init; }

    /// <summary>Address to which readers answer where their operator has set none; null for that of the sender.</summary>
    public string? ReplyTo { get; init; }

    /// <summary>Folder that a mail server puts reports of undeliverable mail into; null for none.</summary>
    public string? Bounces { get; init; }

    /// <summary>Folder that each attempt is noted in, outside the database; null for none.</summary>
    public string? Journal { get; init; }

    internal static IReadOnlyList<(string Name, string Meaning)> Known { get; } =
    [
        ("FLEETWAKE_MAIL_FROM", "sender of digests (fleetwake@localhost when not set)"),
        ("FLEETWAKE_MAIL_REPLY_TO", "address to which readers of operators answer that have set none of their own by \"fleetwake operator reply-to\" (the sender when not set)"),
        ("FLEETWAKE_MAIL_FOLDER", "pickup folder that mails are written to as .eml (\"mail\" when not set); not used with SMTP"),
        ("FLEETWAKE_MAIL_KEPT", "days for which the text of a message is kept when it is settled, to be looked at and sent again (30 when not set, 0 for not at all)"),
        ("FLEETWAKE_MAIL_JOURNAL", "folder, best on another disk than the database's, in which each attempt is noted: after a restore nothing that went out goes out again"),
        ("FLEETWAKE_MAIL_BOUNCES_TO", "address that reports of undeliverable mail go to (the sender when not set)"),
        ("FLEETWAKE_BOUNCES", "folder from which such reports are taken, one .eml each"),
        ("FLEETWAKE_MAIL_SENDERS", "messages under way at once (6 when not set)"),
        ("FLEETWAKE_MAIL_PER_HOST", "of these, to one receiving host (2 when not set)"),
        ("FLEETWAKE_MAIL_PER_MINUTE", "messages a minute to one receiving host, by each \"fleetwake work\" (no limit when not set)"),
        ("FLEETWAKE_SMTP_HOST", "mail server; when set, digests go out by SMTP"),
        ("FLEETWAKE_SMTP_PORT", "its port (587 when not set)"),
        ("FLEETWAKE_SMTP_SECURITY", "none, starttls or tls (starttls when not set)"),
        ("FLEETWAKE_SMTP_CA", "PEM file of a private authority, the only one whose certificates the mail server may then show (those that the system trusts when not set)"),
        ("FLEETWAKE_SMTP_USER", "user name at the mail server"),
        ("FLEETWAKE_SMTP_PASSWORD", "password at the mail server"),
        ("FLEETWAKE_SMTP_TOKEN_URL", "https address that gives a token in place of a password (OAuth 2, XOAUTH2)"),
        ("FLEETWAKE_SMTP_TOKEN_CLIENT", "id of the client there"),
        ("FLEETWAKE_SMTP_TOKEN_SECRET", "secret of the client there"),
        ("FLEETWAKE_SMTP_TOKEN_SCOPE", "scope that is asked for"),
        ("FLEETWAKE_SMTP_TOKEN_REFRESH", "refresh token; the client's own credentials are used when not set"),
        ("FLEETWAKE_DKIM_KEY", "PEM file of the private key that signs mail (\"fleetwake mail dkim-key\" makes one)"),
        ("FLEETWAKE_DKIM_DOMAIN", "domain that signs (that of the sender when not set)"),
        ("FLEETWAKE_DKIM_SELECTOR", "name of the key there, e.g. fw2026"),
        ("FLEETWAKE_DKIM_NEXT_KEY", "PEM file of the key that takes over"),
        ("FLEETWAKE_DKIM_NEXT_SELECTOR", "its name"),
        ("FLEETWAKE_DKIM_NEXT_FROM", "day from which it signs, 00:00 UTC, e.g. 2027-01-15"),
    ];

    private static readonly string[] WithKey = ["DKIM_DOMAIN", "DKIM_NEXT_KEY", "DKIM_NEXT_SELECTOR", "DKIM_NEXT_FROM"];

    internal static MailSettings Read(IConfiguration set)
    {
        var from = Address(set, "MAIL_FROM") ?? "fleetwake@localhost";
        var back = Address(set, "MAIL_BOUNCES_TO");
        var smtp = SmtpReading.From(set);
        if (back is not null && smtp is null) throw new SettingsException("FLEETWAKE_MAIL_BOUNCES_TO is set, and FLEETWAKE_SMTP_HOST is not: a pickup folder tells nobody where reports go; take it away.");
        var bounces = FleetSettings.Text(set, "BOUNCES");
        if (bounces is not null && !Directory.Exists(bounces)) throw new SettingsException($"FLEETWAKE_BOUNCES is \"{bounces}\", and there is no such folder.");
        var journal = FleetSettings.Text(set, "MAIL_JOURNAL");
        if (journal is not null && !Directory.Exists(journal)) throw new SettingsException($"FLEETWAKE_MAIL_JOURNAL is \"{journal}\", and there is no such folder.");
        return new MailSettings(from, FleetSettings.Text(set, "MAIL_FOLDER") ?? "mail", smtp is null ? null : smtp with { BouncesTo = back })
        {
            Kept = TimeSpan.FromDays(Whole(set, "MAIL_KEPT", 0, 3650, 30)),
            Sending = SendingSettings.Usual with
            {
                Senders = Whole(set, "MAIL_SENDERS", 1, 50, SendingSettings.Usual.Senders),
                PerHost = Whole(set, "MAIL_PER_HOST", 1, 50, SendingSettings.Usual.PerHost),
                PerMinute = Whole(set, "MAIL_PER_MINUTE", 0, 100_000, 0),
            },
            Signing = Signs(set, from),
            Bounces = bounces,
            ReplyTo = Address(set, "MAIL_REPLY_TO"),
            Journal = journal,
        };
    }

    private static MailSigning? Signs(IConfiguration set, string from)
    {
        var domain = FleetSettings.Text(set, "DKIM_DOMAIN") ?? from.Split('@')[^1];
        if (Key(set, "DKIM", domain, null) is not { } first)
        {
            return Array.Find(WithKey, name => FleetSettings.Text(set, name) is not null) is { } alone
                ? throw new SettingsException($"FLEETWAKE_{alone} is set, and FLEETWAKE_DKIM_KEY is not: name the file of the key, or take FLEETWAKE_{alone} away.")
                : null;
        }

        var day = FleetSettings.Text(set, "DKIM_NEXT_FROM");
        var when = DateOnly.TryParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero) : (DateTimeOffset?)null;
        if (Key(set, "DKIM_NEXT", domain, when) is not { } next) return new MailSigning([first]);
        if (when is null) throw new SettingsException($"FLEETWAKE_DKIM_NEXT_FROM is \"{day}\": give the day from which the next key signs, as in 2027-01-15.");
        return next.Selector == first.Selector
            ? throw new SettingsException("FLEETWAKE_DKIM_NEXT_SELECTOR is that of the key before: give the next key a name of its own, so that both can be looked up.")
            : new MailSigning([first, next]);
    }

    private static DkimKey? Key(IConfiguration set, string name, string domain, DateTimeOffset? from)
    {
        var (file, selector) = (FleetSettings.Text(set, name + "_KEY"), FleetSettings.Text(set, name + "_SELECTOR"));
        if (file is null && selector is null) return null;
        if (file is null) throw new SettingsException($"FLEETWAKE_{name}_SELECTOR is set, and FLEETWAKE_{name}_KEY is not: name the file of the key.");
        if (selector is null || !selector.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.')) throw new SettingsException($"FLEETWAKE_{name}_SELECTOR is \"{selector}\": give the key's name in DNS, as in fw2026.");
        try
        {
            return new DkimKey(domain, selector, DkimKey.Read(File.ReadAllText(file)), from);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new SettingsException($"FLEETWAKE_{name}_KEY is \"{file}\", which cannot be used: {e.Message}");
        }
    }

    private static string? Address(IConfiguration set, string name)
    {
        if (FleetSettings.Text(set, name) is not { } text) return null;

        // The parser takes a name without a host for an address of this machine; no mail server does. A name beside the address is left aside: messages bear the operator's.
        return !text.Any(char.IsControl) && MimeKit.MailboxAddress.TryParse(text, out var sender) && sender.Address.Split('@') is [{ Length: > 0 }, { Length: > 0 }]
            ? sender.Address
            : throw new SettingsException($"FLEETWAKE_{name} is \"{text}\": give a mail address, as in fleet@example.org.");
    }

    private static int Whole(IConfiguration set, string name, int least, int most, int usual) =>
        FleetSettings.Text(set, name) is not { } text ? usual
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most ? number
        : throw new SettingsException($"FLEETWAKE_{name} is \"{text}\": give a whole number from {least} to {most}.");
}
