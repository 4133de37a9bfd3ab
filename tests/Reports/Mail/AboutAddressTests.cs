using FleetWake.Reports.Mail;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>Of what a refusal is, by reply code (RFC 5321, 4.2) and enhanced status (RFC 3463, 3): of the address, of the message, or of our own server.</summary>
public class AboutAddressTests
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("RCPT", "550 no such person", true)]
    [InlineData("RCPT", "550 5.1.1 no such person", true)]
    [InlineData("RCPT", "556 5.1.10 it takes no mail at all", true)]
    [InlineData("RCPT", "550 5.2.1 closed", true)]
    [InlineData("RCPT", "552 5.2.2 mailbox full", false)] // it has room again some day
    [InlineData("RCPT", "552 5.2.3 too long for this one", false)]
    [InlineData("RCPT", "550 5.1.8 sender address rejected", false)] // one wrong setting of ours
    [InlineData("RCPT", "550 5.1.7 bad sender", false)]
    [InlineData("RCPT", "550 5.1.0 sender rejected", false)]
    [InlineData("RCPT", "550 5.7.1 not from you", false)]
    [InlineData("MAIL", "550 5.7.1 you are not known here", false)]
    [InlineData("MAIL", "550 5.1.8 your address is bad", false)]
    [InlineData(".", "550 no such person", true)]
    [InlineData(".", "552 too big", false)]
    [InlineData(".", "554 5.6.0 odd", false)]
    public async Task A_refusal_for_good_is_about_the_address_or_not(string verb, string answer, bool aboutAddress)
    {
        Assert.Equal(aboutAddress, Assert.IsType<Delivery.Refused>(await SendAsync((verb, answer))).AboutAddress);
    }

    [Theory]
    [InlineData("", "421 too busy", Waits.Everything)]
    [InlineData("EHLO", "cut", Waits.Everything)]
    [InlineData("RCPT", "451 greylisted", Waits.Host)]
    [InlineData("RCPT", "421 closing", Waits.Host)]
    [InlineData(".", "421 closing", Waits.Host)]
    [InlineData("RCPT", "452 no room", Waits.Message)]
    [InlineData("RCPT", "cut", Waits.Host)]
    public async Task A_refusal_for_now_lets_the_host_wait_that_asked_for_it(string verb, string answer, Waits waits)
    {
        Assert.Equal(waits, Assert.IsType<Delivery.Deferred>(await SendAsync((verb, answer))).Waits);
    }

    [Fact]
    public async Task What_a_server_says_is_kept_without_addresses_on_one_line()
    {
        var refused = Assert.IsType<Delivery.Refused>(await SendAsync(("RCPT", "550-5.1.1 <mo@skerry.example>: no such user\r\n550 5.1.1 ask postmaster@skerry.example (mo@skerry.example)")));
        Assert.DoesNotContain("skerry", refused.Why, StringComparison.Ordinal);
        Assert.Contains("(address)", refused.Why, StringComparison.Ordinal);
        Assert.DoesNotContain(refused.Why, char.IsControl);
        Assert.Equal("250 2.0.0 queued as 4F1"[4..], Assert.IsType<Delivery.Sent>(await SendAsync((".", "250 2.0.0 queued as 4F1"))).Said);
    }

    [Fact]
    public async Task Reports_go_to_the_address_that_is_set_and_the_reader_sees_the_sender_as_ever()
    {
        await using var server = new UglyServer();
        var post = new SmtpPost(new SmtpSettings("127.0.0.1", server.Port, SmtpSecurity.None, null, null, TimeSpan.FromSeconds(10)) { BouncesTo = "bounces@mail.example" });
        Assert.IsType<Delivery.Sent>(await post.SendAsync(Letters.Message(), Ct));
        Assert.Contains(server.Lines, l => l.StartsWith("MAIL FROM:<bounces@mail.example>", StringComparison.Ordinal));
        Assert.Contains("From: FleetWake <digest@mail.example>", server.Lines);
    }

    private static async Task<Delivery> SendAsync(params (string, string)[] script)
    {
        await using var server = new UglyServer(script);
        return await new SmtpPost(new SmtpSettings("127.0.0.1", server.Port, SmtpSecurity.None, null, null, TimeSpan.FromSeconds(10))).SendAsync(Letters.Message(), Ct);
    }
}
