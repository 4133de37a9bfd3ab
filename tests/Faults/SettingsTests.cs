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

    private static FleetSettings Read(params (string Name, string Value)[] set) => FleetSettings.From(
        new ConfigurationBuilder().AddInMemoryCollection(set.Select(s => KeyValuePair.Create<string, string?>(s.Name, s.Value))).Build());
}
