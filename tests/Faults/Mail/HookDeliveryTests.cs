using System.Collections.Concurrent;
using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Reports.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>
/// Alerts handed over by HTTPS to a real listener, which knows the secret and nothing else of the program. The guard against private networks holds
/// for it as for any other: only here the post is told that this machine may be connected to.
/// </summary>
public sealed class HookDeliveryTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly ShiftedTime time = ShiftedTime.From(new DateTimeOffset(2026, 11, 30, 7, 0, 0, TimeSpan.Zero));
    private FleetDatabase database = null!;
    private AlertHooks hooks = null!;
    private OperatorCard card = null!;
    private Listener listener = null!;
    private HookSender sender = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("hookdelivery", Ct), Ct);
        hooks = new AlertHooks(database.Store, database.Source, time);
        card = await new FleetOperators(database.Store, time).OpenAsync("skerry-bay", "Skerry Bay Hire", "Pacific/Auckland", Ct);
        listener = await Listener.StartAsync();
        var post = new HookPost(time, (_, _) => Task.FromResult<IPAddress[]>([IPAddress.Loopback]), IPAddress.IsLoopback, listener.Trust);
        sender = new HookSender(hooks, post, time, NullLogger<HookSender>.Instance);
    }

    public async ValueTask DisposeAsync()
    {
        sender.Dispose();
        await listener.DisposeAsync();
        await database.DisposeAsync();
    }

    [Fact]
    public async Task An_alert_arrives_signed_and_its_listener_can_tell_it_from_a_forged_one()
    {
        var secret = await hooks.SetAsync(card, listener.Address, "admin-1", Ct);
        await QueueAsync("a-1", """{"subject":"Tern, severe strike – rock","causes":[]}""");
        Assert.True(await sender.SendOneAsync(Ct));
        var told = Assert.Single(listener.Told);
        Assert.Equal(("a-1", "application/json", "/alerts"), (told.Alert, told.ContentType, told.Path));
        Assert.Equal("Tern, severe strike – rock", (string?)JsonNode.Parse(told.Body)!["subject"]);
        Assert.True(IsOurs(told, secret, time.GetUtcNow()));
        Assert.False(IsOurs(told with { Body = [.. told.Body, (byte)' '] }, secret, time.GetUtcNow()));
        Assert.False(IsOurs(told, secret + "x", time.GetUtcNow()));
        Assert.False(IsOurs(told, secret, time.GetUtcNow().AddMinutes(6)));
        Assert.Equal((MailState.Sent, 1), await StateAsync("a-1"));
        Assert.False(await sender.SendOneAsync(Ct));
    }

    [Theory]
    [InlineData(500)]
    [InlineData(503)]
    [InlineData(429)]
    [InlineData(408)]
    public async Task What_is_not_taken_for_now_comes_again_under_the_same_id_and_signed_anew(int status)
    {
        var secret = await hooks.SetAsync(card, listener.Address, null, Ct);
        listener.Answers.Enqueue(status);
        await QueueAsync("a-1", "{}");
        Assert.True(await sender.SendOneAsync(Ct));
        Assert.Equal((MailState.Deferred, 1), await StateAsync("a-1"));
        Assert.False(await sender.SendOneAsync(Ct)); // not before its wait is over
        time.Move(TimeSpan.FromMinutes(6));
        Assert.True(await sender.SendOneAsync(Ct));
        Assert.Equal((MailState.Sent, 2), await StateAsync("a-1"));
        Assert.Equal(["a-1", "a-1"], listener.Told.Select(t => t.Alert));
        Assert.Equal(2, listener.Told.Select(t => t.Signature).Distinct().Count());
        Assert.True(IsOurs(listener.Told.Last(), secret, time.GetUtcNow()));
    }

    [Theory]
    [InlineData(410)]
    [InlineData(400)]
    [InlineData(404)]
    [InlineData(302)] // and nobody is sent where it leads
    public async Task What_is_refused_is_not_tried_again(int status)
    {
        await hooks.SetAsync(card, listener.Address, null, Ct);
        listener.Answers.Enqueue(status);
        await QueueAsync("a-1", "{}");
        Assert.True(await sender.SendOneAsync(Ct));
        Assert.Equal((MailState.Refused, 1), await StateAsync("a-1"));
        time.Move(TimeSpan.FromHours(47));
        Assert.False(await sender.SendOneAsync(Ct));
        Assert.Single(listener.Told);
    }

    [Fact]
    public async Task After_a_new_secret_the_one_before_signs_nothing()
    {
        var first = await hooks.SetAsync(card, listener.Address, null, Ct);
        var second = await hooks.RenewAsync(card, "admin-1", Ct);
        await QueueAsync("a-1", "{}");
        Assert.True(await sender.SendOneAsync(Ct));
        var told = Assert.Single(listener.Told);
        Assert.False(IsOurs(told, first, time.GetUtcNow()));
        Assert.True(IsOurs(told, second!, time.GetUtcNow()));
    }

    [Fact]
    public async Task Without_the_tests_leave_nothing_is_connected_to_and_a_certificate_of_nobody_gets_nothing()
    {
        await hooks.SetAsync(card, listener.Address, null, Ct);
        using var guarded = new HookSender(hooks, new HookPost(time, (_, _) => Task.FromResult<IPAddress[]>([IPAddress.Loopback]), tls: listener.Trust), time, NullLogger<HookSender>.Instance);
        await QueueAsync("a-1", "{}");
        Assert.True(await guarded.SendOneAsync(Ct));
        Assert.Equal((MailState.Refused, 1), await StateAsync("a-1"));

        using var strict = new HookSender(hooks, new HookPost(time, (_, _) => Task.FromResult<IPAddress[]>([IPAddress.Loopback]), IPAddress.IsLoopback), time, NullLogger<HookSender>.Instance);
        await QueueAsync("a-2", "{}");
        Assert.True(await strict.SendOneAsync(Ct));
        Assert.Equal((MailState.Deferred, 1), await StateAsync("a-2"));
        Assert.Empty(listener.Told);
    }

    /// <summary>What docs/mail.md asks of whoever listens, written from its words.</summary>
    private static bool IsOurs(Told told, string secret, DateTimeOffset now)
    {
        var parts = told.Signature.Split(',').Select(p => p.Split('=', 2)).ToDictionary(p => p[0], p => p[1]);
        using var hmac = new HMACSHA256(Encoding.ASCII.GetBytes(secret));
        var expected = hmac.ComputeHash([.. Encoding.ASCII.GetBytes(parts["t"] + "."), .. told.Body]);
        return CryptographicOperations.FixedTimeEquals(expected, Convert.FromHexString(parts["v1"]))
            && Math.Abs(now.ToUnixTimeSeconds() - long.Parse(parts["t"], System.Globalization.CultureInfo.InvariantCulture)) <= 300;
    }

    private async Task QueueAsync(string alert, string json)
    {
        await using var session = database.Store.LightweightSession(card.Id);
        hooks.Queue(session, card.Id, alert, json);
        await session.SaveChangesAsync(Ct);
    }

    private async Task<(string State, int Attempts)> StateAsync(string alert)
    {
        var one = (await hooks.ListAsync(card.Id, 10, Ct)).Single(h => h.Alert == alert);
        return (one.State, one.Attempts);
    }

    private sealed record Told(string Path, string Alert, string Signature, string? ContentType, byte[] Body);

    /// <summary>Somebody's program behind a certificate of its own, which answers as it is told, else 200.</summary>
    private sealed class Listener : IAsyncDisposable
    {
        private readonly WebApplication app;
        private readonly X509Certificate2 certificate;

        private Listener(WebApplication app, X509Certificate2 certificate) => (this.app, this.certificate) = (app, certificate);

        public Uri Address => new($"https://hook.example:{new Uri(app.Urls.First()).Port}/alerts");

        /// <summary>Trusts the listener's certificate, by its bytes and its name, and no other.</summary>
        public SslClientAuthenticationOptions Trust => new()
        {
            RemoteCertificateValidationCallback = (_, shown, _, errors) => !errors.HasFlag(SslPolicyErrors.RemoteCertificateNameMismatch) && shown?.GetCertHashString() == certificate.GetCertHashString(),
        };

        public ConcurrentQueue<int> Answers { get; } = new();

        public ConcurrentQueue<Told> Told { get; } = new();

        public static async Task<Listener> StartAsync()
        {
            using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
            var request = new CertificateRequest("CN=hook.example", key, HashAlgorithmName.SHA256);
            var names = new SubjectAlternativeNameBuilder();
            names.AddDnsName("hook.example");
            request.CertificateExtensions.Add(names.Build());
            var certificate = request.CreateSelfSigned(TimeProvider.System.GetUtcNow().AddDays(-1), TimeProvider.System.GetUtcNow().AddDays(1));
            var builder = WebApplication.CreateSlimBuilder();
            builder.Logging.ClearProviders();
            builder.WebHost.UseKestrelHttpsConfiguration();
            builder.WebHost.ConfigureKestrel(k => k.Listen(IPAddress.Loopback, 0, o => o.UseHttps(certificate)));
            var app = builder.Build();
            var listener = new Listener(app, certificate);
            app.MapPost("/alerts", async (HttpContext http) =>
            {
                using var body = new MemoryStream();
                await http.Request.Body.CopyToAsync(body, http.RequestAborted);
                listener.Told.Enqueue(new Told(http.Request.Path, http.Request.Headers[HookPost.AlertHeader].ToString(), http.Request.Headers[HookPost.SignatureHeader].ToString(), http.Request.ContentType, body.ToArray()));
                var status = listener.Answers.TryDequeue(out var told) ? told : 200;
                if (status == 302) http.Response.Headers.Location = "/elsewhere";
                http.Response.StatusCode = status;
            });
            app.MapFallback((HttpContext http) => listener.Told.Enqueue(new Told(http.Request.Path, "", "", null, [])));
            await app.StartAsync(Ct);
            return listener;
        }

        public async ValueTask DisposeAsync()
        {
            await app.DisposeAsync();
            certificate.Dispose();
        }
    }
}
