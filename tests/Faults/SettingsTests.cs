using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Mail;
using FleetWake.Settings;
using Microsoft.Extensions.Configuration;

namespace FleetWake.Faults.Tests;

/// <summary>Settings are read before anything starts, and a wrong one is told with its mend.</summary>
public sealed class SettingsTests
{
    [Fact]
    public void Nothing_set_means_this_machine_only_and_the_newest_digest()
    {
        var settings = Read();
        Assert.Equal((FleetSettings.DefaultUrls, FleetSettings.DefaultHealthUrls, MissedRule.Latest), (settings.Urls, settings.HealthUrls, settings.CatchUp));
        Assert.Null(settings.Mail.Smtp);
    }

    [Fact]
    public void What_is_set_is_taken()
    {
        var settings = Read(("HEALTH_URLS", "None"), ("CATCH_UP", "ALL"), ("SMTP_HOST", "mail.example"), ("SMTP_SECURITY", "TLS"), ("SMTP_PORT", "465"));
        Assert.Equal((null, MissedRule.All), (settings.HealthUrls, settings.CatchUp));
        Assert.Equal((SmtpSecurity.Tls, 465), (settings.Mail.Smtp!.Security, settings.Mail.Smtp.Port));
    }

    [Theory]
    [InlineData("latest or all", "CATCH_UP", "some")]
    [InlineData("1 to 65535", "SMTP_PORT", "0", "SMTP_HOST", "mail.example")]
    [InlineData("none, starttls or tls", "SMTP_SECURITY", "ssl", "SMTP_HOST", "mail.example")]
    [InlineData("for anybody on the way to read", "SMTP_SECURITY", "none", "SMTP_HOST", "mail.example", "SMTP_USER", "fleet")]
    [InlineData("cannot be read", "SMTP_CA", "no-such-file.pem", "SMTP_HOST", "mail.example")]
    [InlineData("give an https address", "PUBLIC_URL", "http://fleet.example")]
    [InlineData("give an http address as in http://", "URLS", "ftp://x")]
    [InlineData("give an http address as in http://", "URLS", "zzz")]
    [InlineData("give an http address as in http://", "URLS", "127.0.0.1:25091")]
    [InlineData("give an http address as in http://", "URLS", "https://127.0.0.1:25091")]
    [InlineData("give an http address as in http://", "URLS", "http://127.0.0.1:port")]
    [InlineData("give an http address as in http://", "URLS", "http://127.0.0.1:70000")]
    [InlineData("give an http address as in http://", "URLS", "http://127.0.0.1:25091/fleet")]
    [InlineData("give an http address as in http://", "URLS", "http://127.0.0.1:25091;zzz")]
    [InlineData("give an http address as in http://", "URLS", ";")]
    [InlineData("or none", "HEALTH_URLS", "127.0.0.1:25091")]
    [InlineData("give a mail address", "MAIL_FROM", "zzz")]
    [InlineData("give a mail address", "MAIL_FROM", "fleet@")]
    [InlineData("give a mail address", "MAIL_REPLY_TO", "office")]
    [InlineData("give a mail address", "MAIL_REPLY_TO", "office@bay.example\r\nBcc: all@elsewhere.example")]
    [InlineData("give a mail address", "MAIL_REPLY_TO", "office@bay.example, all@elsewhere.example")]
    [InlineData("and FLEETWAKE_SMTP_HOST is not", "SMTP_USER", "fleet")]
    [InlineData("and FLEETWAKE_SMTP_HOST is not", "SMTP_PORT", "587")]
    [InlineData("and FLEETWAKE_SMTP_HOST is not", "SMTP_TOKEN_URL", "https://token.example/")]
    [InlineData("1 to 65535", "SMTP_PORT", "smtp", "SMTP_HOST", "mail.example")]
    [InlineData("1 to 65535", "SMTP_PORT", "65536", "SMTP_HOST", "mail.example")]
    [InlineData("give an https address, for the secret goes there", "SMTP_TOKEN_URL", "http://token.example/", "SMTP_HOST", "mail.example", "SMTP_USER", "fleet")]
    [InlineData("FLEETWAKE_SMTP_USER is not", "SMTP_TOKEN_URL", "https://token.example/", "SMTP_HOST", "mail.example")]
    [InlineData("FLEETWAKE_SMTP_TOKEN_CLIENT is not", "SMTP_TOKEN_URL", "https://token.example/", "SMTP_HOST", "mail.example", "SMTP_USER", "fleet")]
    [InlineData("give one way to sign in", "SMTP_PASSWORD", "secret", "SMTP_TOKEN_URL", "https://token.example/", "SMTP_HOST", "mail.example", "SMTP_USER", "fleet")]
    [InlineData("FLEETWAKE_SMTP_TOKEN_URL is not", "SMTP_TOKEN_SECRET", "s", "SMTP_HOST", "mail.example", "SMTP_USER", "fleet")]
    [InlineData("a pickup folder tells nobody", "MAIL_BOUNCES_TO", "bounces@fleet.example")]
    [InlineData("give a mail address", "MAIL_BOUNCES_TO", "bounces", "SMTP_HOST", "mail.example")]
    [InlineData("there is no such folder", "BOUNCES", "/no/such/folder")]
    [InlineData("there is no such folder", "MAIL_JOURNAL", "/no/such/folder")]
    [InlineData("a whole number from 0 to 3650", "MAIL_KEPT", "-1")]
    [InlineData("a whole number from 0 to 3650", "MAIL_KEPT", "a month")]
    [InlineData("a whole number from 1 to 50", "MAIL_SENDERS", "0")]
    [InlineData("a whole number from 1 to 50", "MAIL_PER_HOST", "51")]
    [InlineData("a whole number from 0 to 100000", "MAIL_PER_MINUTE", "1.5")]
    [InlineData("and FLEETWAKE_DKIM_KEY is not", "DKIM_SELECTOR", "fw2026")]
    [InlineData("and FLEETWAKE_DKIM_KEY is not", "DKIM_DOMAIN", "fleet.example")]
    [InlineData("and FLEETWAKE_DKIM_KEY is not", "DKIM_NEXT_FROM", "2027-01-15")]
    [InlineData("give the key's name in DNS", "DKIM_SELECTOR", "fw 2026", "DKIM_KEY", "key.pem")]
    [InlineData("which cannot be used", "DKIM_KEY", "/no/such/key.pem", "DKIM_SELECTOR", "fw2026")]
    public void A_wrong_setting_is_told_with_its_mend(string says, params string[] set)
    {
        var wrong = Assert.Throws<SettingsException>(() => Read([.. set.Chunk(2).Select(pair => (pair[0], pair[1]))]));
        Assert.Contains(says, wrong.Message, StringComparison.Ordinal);
        Assert.Contains($"FLEETWAKE_{set[0]}", wrong.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://127.0.0.1:0")]
    [InlineData("http://*:5080")]
    [InlineData("http://+:5080;http://[::1]:5081")]
    [InlineData("http://localhost:5080/")]
    [InlineData("http://unix:/run/fleetwake.sock")]
    public void Whatever_the_server_can_listen_on_may_be_set(string urls) => Assert.Equal((urls, urls), (Read(("URLS", urls)).Urls, Read(("HEALTH_URLS", urls)).HealthUrls));

    [Fact]
    public void A_sender_may_have_a_name() => Assert.Equal("fleet@example.org", Read(("MAIL_FROM", "Fleet <fleet@example.org>")).Mail.From);

    [Fact]
    public void A_password_in_clear_may_go_to_this_machine() =>
        Assert.Equal("fleet", Read(("SMTP_HOST", "127.0.0.1"), ("SMTP_SECURITY", "none"), ("SMTP_USER", "fleet")).Mail.Smtp!.User);

    [Fact]
    public void A_file_without_a_certificate_is_no_authority()
    {
        var file = Path.GetTempFileName();
        File.WriteAllText(file, "no certificate\n");
        Assert.Contains("no certificate in it", Assert.Throws<SettingsException>(() => Read(("SMTP_HOST", "mail.example"), ("SMTP_CA", file))).Message, StringComparison.Ordinal);
        File.Delete(file);
    }

    [Fact]
    public void A_key_that_signs_mail_is_read_and_what_is_wrong_with_it_or_the_next_one_is_told()
    {
        var folder = Directory.CreateTempSubdirectory("fleetwake-dkim-").FullName;
        var (key, other, none) = (Path.Combine(folder, "a.pem"), Path.Combine(folder, "b.pem"), Path.Combine(folder, "none.pem"));
        File.WriteAllText(key, DkimKey.MakePem(ed25519: false));
        File.WriteAllText(other, DkimKey.MakePem(ed25519: true));
        File.WriteAllText(none, "no key\n");
        (string, string)[] first = [("MAIL_FROM", "digest@fleet.example"), ("DKIM_KEY", key), ("DKIM_SELECTOR", "fw2026")];
        Assert.NotNull(Read(first).Mail.Signing);
        Assert.NotNull(Read([.. first, ("DKIM_NEXT_KEY", other), ("DKIM_NEXT_SELECTOR", "fw2027"), ("DKIM_NEXT_FROM", "2027-01-15")]).Mail.Signing);
        Wrong("FLEETWAKE_DKIM_KEY", "which cannot be used", ("DKIM_KEY", none), ("DKIM_SELECTOR", "fw2026"));
        Wrong("FLEETWAKE_DKIM_SELECTOR", "give the key's name in DNS", ("DKIM_KEY", key));
        Wrong("FLEETWAKE_DKIM_NEXT_FROM", "give the day", [.. first, ("DKIM_NEXT_KEY", other), ("DKIM_NEXT_SELECTOR", "fw2027"), ("DKIM_NEXT_FROM", "15.1.2027")]);
        Wrong("FLEETWAKE_DKIM_NEXT_FROM", "give the day", [.. first, ("DKIM_NEXT_KEY", other), ("DKIM_NEXT_SELECTOR", "fw2027")]);
        Wrong("FLEETWAKE_DKIM_NEXT_SELECTOR", "a name of its own", [.. first, ("DKIM_NEXT_KEY", other), ("DKIM_NEXT_SELECTOR", "fw2026"), ("DKIM_NEXT_FROM", "2027-01-15")]);
        Wrong("FLEETWAKE_DKIM_NEXT_SELECTOR", "name the file of the key", [.. first, ("DKIM_NEXT_SELECTOR", "fw2027"), ("DKIM_NEXT_FROM", "2027-01-15")]);
        Directory.Delete(folder, recursive: true);

        static void Wrong(string setting, string says, params (string, string)[] set)
        {
            var wrong = Assert.Throws<SettingsException>(() => Read(set)).Message;
            Assert.StartsWith(setting, wrong, StringComparison.Ordinal);
            Assert.Contains(says, wrong, StringComparison.Ordinal);
        }
    }

    private static FleetSettings Read(params (string Name, string Value)[] set) => FleetSettings.From(
        new ConfigurationBuilder().AddInMemoryCollection(set.Select(s => KeyValuePair.Create<string, string?>(s.Name, s.Value))).Build());
}
