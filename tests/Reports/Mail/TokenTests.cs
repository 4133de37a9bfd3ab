using System.Net;
using System.Text;
using FleetWake.Reports.Mail;
using Microsoft.Extensions.Time.Testing;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>Signing in at a mail server by a token (SASL XOAUTH2) that an endpoint gives (RFC 6749).</summary>
public class TokenTests
{
    private readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 11, 30, 7, 0, 0, TimeSpan.Zero));

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_token_is_asked_for_by_the_clients_own_credentials_kept_and_asked_for_anew_before_it_ends()
    {
        var endpoint = new Endpoint();
        var token = Token(endpoint, null);
        Assert.Equal("token-1", await token.GetAsync(Ct));
        Assert.Equal("token-1", await token.GetAsync(Ct));
        Assert.Equal("grant_type=client_credentials&client_id=fleet&client_secret=s%26cret&scope=smtp", Assert.Single(endpoint.Asked)); // RFC 6749, 4.4.2
        time.Advance(TimeSpan.FromMinutes(58));
        Assert.Equal("token-2", await token.GetAsync(Ct));
    }

    [Fact]
    public async Task A_refresh_token_is_used_and_replaced_by_the_one_that_comes_with_the_answer()
    {
        var endpoint = new Endpoint { Refresh = "r-2" };
        var token = Token(endpoint, "r-1");
        await token.GetAsync(Ct);
        token.Forget();
        await token.GetAsync(Ct);
        Assert.Equal(["r-1", "r-2"], endpoint.Asked.Select(a => a.Split('&').Single(p => p.StartsWith("refresh_token=", StringComparison.Ordinal))[14..])); // RFC 6749, 6
    }

    [Theory]
    [InlineData(HttpStatusCode.BadRequest, "{\"error\":\"invalid_client\",\"echo\":\"s&cret\"}")]
    [InlineData(HttpStatusCode.OK, "{}")]
    [InlineData(HttpStatusCode.OK, "no json")]
    public async Task Whatever_else_is_answered_is_told_without_a_secret(HttpStatusCode status, string body)
    {
        var wrong = await Assert.ThrowsAsync<TokenException>(() => Token(new Endpoint { Answer = (status, body) }, null).GetAsync(Ct));
        Assert.DoesNotContain("cret", wrong.Message, StringComparison.Ordinal);
        Assert.Contains("login.example", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_server_is_signed_in_to_with_user_and_token_and_a_token_it_does_not_take_is_asked_for_anew()
    {
        var endpoint = new Endpoint();
        var token = Token(endpoint, null);
        await using (var server = new UglyServer(("EHLO", "250-mail.example\r\n250 AUTH XOAUTH2"), ("AUTH", "535 5.7.8 no")))
            Assert.Equal(Waits.Everything, Assert.IsType<Delivery.Deferred>(await Post(server, token).SendAsync(Letters.Message(), Ct)).Waits);
        await using (var server = new UglyServer(("EHLO", "250-mail.example\r\n250 AUTH XOAUTH2"), ("AUTH", "235 2.7.0 welcome")))
        {
            Assert.IsType<Delivery.Sent>(await Post(server, token).SendAsync(Letters.Message(), Ct));
            Assert.Contains("AUTH", server.Verbs);

            // user=NAME^Aauth=Bearer TOKEN^A^A, base64.
            Assert.Contains(server.Lines, l => l == "AUTH XOAUTH2 " + Convert.ToBase64String(Encoding.ASCII.GetBytes("user=fleet@bay.example\u0001auth=Bearer token-2\u0001\u0001")));
        }

        Assert.Equal(2, endpoint.Asked.Count);
    }

    private static SmtpPost Post(UglyServer server, MailToken token) =>
        new(new SmtpSettings("127.0.0.1", server.Port, SmtpSecurity.None, "fleet@bay.example", null, TimeSpan.FromSeconds(10)) { Token = token });

    private MailToken Token(Endpoint endpoint, string? refresh) =>
        new(new TokenSettings(new Uri("https://login.example/token"), "fleet", "s&cret", "smtp", refresh), new HttpClient(endpoint), time);

    /// <summary>A token endpoint without a network.</summary>
    private sealed class Endpoint : HttpMessageHandler
    {
        public List<string> Asked { get; } = [];

        public string? Refresh { get; init; }

        public (HttpStatusCode Status, string Body)? Answer { get; init; }

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            Asked.Add(await request.Content!.ReadAsStringAsync(cancellationToken));
            var (status, body) = Answer ?? (HttpStatusCode.OK, $$"""{"access_token":"token-{{Asked.Count}}","token_type":"Bearer","expires_in":3600{{(Refresh is null ? "" : $",\"refresh_token\":\"{Refresh}\"")}}}""");
            return new HttpResponseMessage(status) { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        }
    }
}
