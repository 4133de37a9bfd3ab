using FleetWake.Reports.Mail;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>What becomes of a message when the conversation goes wrong, at each place where it can.</summary>
public class UglyServerTests
{
    private static SmtpPost Post(UglyServer server, double seconds = 10, string? user = null, SmtpSecurity security = SmtpSecurity.None) =>
        new(new SmtpSettings("127.0.0.1", server.Port, security, user, user is null ? null : "wrong", TimeSpan.FromSeconds(seconds)));

    private static async Task<Delivery> Send(params (string, string)[] script)
    {
        await using var server = new UglyServer(script);
        return await Post(server).SendAsync(Letters.Message(), TestContext.Current.CancellationToken);
    }

    [Theory]
    [InlineData("", "421 too busy")]
    [InlineData("", "554 not today")]
    [InlineData("", "cut")]
    [InlineData("EHLO", "cut")]
    [InlineData("MAIL", "421 closing")]
    [InlineData("MAIL", "452 no room")]
    [InlineData("MAIL", "cut")]
    [InlineData("RCPT", "451 greylisted")]
    [InlineData("RCPT", "421 closing")]
    [InlineData("RCPT", "cut")]
    [InlineData("DATA", "451 later")]
    [InlineData("DATA", "cut")]
    [InlineData(".", "451 disk is full")]
    [InlineData(".", "421 closing")]
    public async Task Before_the_text_a_broken_talk_and_at_any_time_a_4xx_is_tried_again(string verb, string answer)
    {
        Assert.IsType<Delivery.Deferred>(await Send((verb, answer)));
    }

    [Theory]
    [InlineData("MAIL", "550 unknown sender")]
    [InlineData("RCPT", "550 no such person")]
    [InlineData("DATA", "554 no")]
    [InlineData(".", "552 too big")]
    public async Task A_5xx_to_the_message_is_final_and_says_what_the_server_said(string verb, string answer)
    {
        var refused = Assert.IsType<Delivery.Refused>(await Send((verb, answer)));
        Assert.Contains(answer[4..], refused.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("TEXT")]
    [InlineData(".")]
    public async Task A_connection_cut_after_the_text_began_is_unclear(string where)
    {
        Assert.IsType<Delivery.Unclear>(await Send((where, "cut")));
    }

    [Fact]
    public async Task Silence_after_the_text_is_unclear_and_does_not_wait_for_ever()
    {
        await using var server = new UglyServer((".", "silence"));
        Assert.IsType<Delivery.Unclear>(await Post(server, 2).SendAsync(Letters.Message(), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Silence_before_the_text_is_tried_again()
    {
        await using var server = new UglyServer(("RCPT", "silence"));
        Assert.IsType<Delivery.Deferred>(await Post(server, 2).SendAsync(Letters.Message(), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_goodbye_that_goes_wrong_does_not_unsend()
    {
        Assert.IsType<Delivery.Sent>(await Send(("QUIT", "cut")));
    }

    [Fact]
    public async Task A_failed_sign_in_and_a_missing_STARTTLS_speak_of_the_settings_and_are_tried_again()
    {
        await using var server = new UglyServer(("EHLO", "250-mail.example\r\n250 AUTH PLAIN"), ("AUTH", "535 no"));
        Assert.IsType<Delivery.Deferred>(await Post(server, user: "user").SendAsync(Letters.Message(), TestContext.Current.CancellationToken));
        await using var bare = new UglyServer();
        Assert.IsType<Delivery.Deferred>(await Post(bare, security: SmtpSecurity.StartTls).SendAsync(Letters.Message(), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_cancelled_attempt_throws_before_the_text_and_is_unclear_after_it()
    {
        await using var early = new UglyServer(("RCPT", "silence"));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => SendAndCancel(early));
        await using var late = new UglyServer((".", "silence"));
        Assert.IsType<Delivery.Unclear>(await SendAndCancel(late));
    }

    private static async Task<Delivery> SendAndCancel(UglyServer server)
    {
        using var cancel = new CancellationTokenSource();
        var sending = Post(server).SendAsync(Letters.Message(), cancel.Token);
        await server.Silent;
        await cancel.CancelAsync();
        return await sending;
    }
}
