using System.Security.Cryptography.X509Certificates;
using FleetWake.Reports.Mail;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>STARTTLS and TLS from the first byte, against real certificates: a good one is used, any other gets nothing in clear or otherwise.</summary>
public sealed class SecuredPostTests : IDisposable
{
    private readonly Certificates ours = new();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public void Dispose() => ours.Dispose();

    [Theory]
    [InlineData(SmtpSecurity.StartTls)]
    [InlineData(SmtpSecurity.Tls)]
    public async Task A_certificate_of_the_authority_that_is_named_is_taken_and_everything_goes_secured(SmtpSecurity security)
    {
        var (delivery, server) = await Try(security, ours.Server());
        Assert.IsType<Delivery.Sent>(delivery);
        Assert.Equal([true], server.Taken);
        Assert.Equal([true], server.SignIns);
    }

    [Theory]
    [InlineData(SmtpSecurity.StartTls)]
    [InlineData(SmtpSecurity.Tls)]
    public async Task A_certificate_for_another_host_is_not_taken(SmtpSecurity security) =>
        await NothingIsSent(security, ours.Server("mail.elsewhere.example", here: false), ours.Authorities, "is for mail.elsewhere.example, not for 127.0.0.1");

    [Theory]
    [InlineData(SmtpSecurity.StartTls)]
    [InlineData(SmtpSecurity.Tls)]
    public async Task A_certificate_that_has_run_out_is_not_taken(SmtpSecurity security) =>
        await NothingIsSent(security, ours.Server(expired: true), ours.Authorities, "out of its time");

    [Theory]
    [InlineData(SmtpSecurity.StartTls)]
    [InlineData(SmtpSecurity.Tls)]
    public async Task A_certificate_of_an_unknown_authority_is_not_taken(SmtpSecurity security)
    {
        using var others = new Certificates("Somebody else");
        await NothingIsSent(security, others.Server(), ours.Authorities, "not trusted here (CN=Somebody else)");
    }

    [Fact]
    public async Task Without_an_authority_of_ones_own_the_system_decides_and_does_not_know_ours() =>
        await NothingIsSent(SmtpSecurity.StartTls, ours.Server(), null, "FLEETWAKE_SMTP_CA");

    [Fact]
    public async Task A_server_that_does_not_offer_STARTTLS_gets_neither_the_sign_in_nor_the_message()
    {
        await using var bare = new UglyServer(("EHLO", "250-mail.example\r\n250 AUTH PLAIN"), ("MAIL", "250 it came in clear"));
        var post = new SmtpPost(Settings(bare.Port, SmtpSecurity.StartTls, ours.Authorities));
        var deferred = Assert.IsType<Delivery.Deferred>(await post.SendAsync(Letters.Message(), Ct));
        Assert.Contains("STARTTLS", deferred.Why, StringComparison.Ordinal);
        Assert.DoesNotContain(bare.Verbs, v => v is "AUTH" or "MAIL");
    }

    private static async Task NothingIsSent(SmtpSecurity security, X509Certificate2 certificate, X509Certificate2Collection? authorities, string why)
    {
        var (delivery, server) = await Try(security, certificate, authorities);
        Assert.Contains(why, Assert.IsType<Delivery.Deferred>(delivery).Why, StringComparison.Ordinal);
        Assert.Empty(server.Taken);
        Assert.Empty(server.SignIns);
    }

    private Task<(Delivery Delivery, SecuredServer Server)> Try(SmtpSecurity security, X509Certificate2 certificate) =>
        Try(security, certificate, ours.Authorities);

    private static async Task<(Delivery Delivery, SecuredServer Server)> Try(
        SmtpSecurity security, X509Certificate2 certificate, X509Certificate2Collection? authorities)
    {
        await using var server = new SecuredServer(certificate, security);
        return (await new SmtpPost(Settings(server.Port, security, authorities)).SendAsync(Letters.Message(), Ct), server);
    }

    private static SmtpSettings Settings(int port, SmtpSecurity security, X509Certificate2Collection? authorities) =>
        new("127.0.0.1", port, security, "fleet", "right", TimeSpan.FromSeconds(10)) { Authorities = authorities };
}
