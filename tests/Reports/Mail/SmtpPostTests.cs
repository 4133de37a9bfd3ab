using System.Buffers;
using System.Net;
using System.Net.Sockets;
using FleetWake.Reports.Mail;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>A real conversation with a mail server; the ugly ones are in <see cref="UglyServerTests"/>.</summary>
public class SmtpPostTests
{
    [Fact]
    public async Task A_server_that_takes_it_has_the_very_message()
    {
        var store = new Store();
        var port = FreePort();
        var options = new SmtpServerOptionsBuilder().ServerName("mail.example").Endpoint(e => e.Endpoint(new IPEndPoint(IPAddress.Loopback, port))).Build();
        var provider = new ServiceProvider();
        provider.Add(store);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var server = new SmtpServer.SmtpServer(options, provider);
        var running = server.StartAsync(stop.Token);

        var message = Letters.Message();
        var post = new SmtpPost(new SmtpSettings("127.0.0.1", port, SmtpSecurity.None, null, null, TimeSpan.FromSeconds(10)));
        Assert.IsType<Delivery.Sent>(await post.SendAsync(message, TestContext.Current.CancellationToken));
        Assert.IsType<Delivery.Sent>(await post.SendAsync(message, TestContext.Current.CancellationToken));

        await stop.CancelAsync();
        await running;
        Assert.Equal(2, store.Taken.Count);
        Assert.All(store.Taken, taken => Assert.Equal(message.MessageId, taken.MessageId));
        Assert.Equal(message.Subject, store.Taken[0].Subject);
        Assert.Equal(message.HtmlBody!.ReplaceLineEndings("\n"), store.Taken[0].HtmlBody!.ReplaceLineEndings("\n"));
        Assert.Equal(Letters.Digest.Pictures.Count, store.Taken[0].BodyParts.Count(p => p.ContentId is not null));
    }

    [Fact]
    public async Task A_server_that_is_not_there_defers()
    {
        var post = new SmtpPost(new SmtpSettings("127.0.0.1", FreePort(), SmtpSecurity.None, null, null, TimeSpan.FromSeconds(5)));
        Assert.IsType<Delivery.Deferred>(await post.SendAsync(Letters.Message(), TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Settings_do_not_give_the_password_away()
    {
        Assert.DoesNotContain("secret", new SmtpSettings("h", 25, SmtpSecurity.Tls, "u", "secret", TimeSpan.FromSeconds(1)).ToString(), StringComparison.Ordinal);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private sealed class Store : MessageStore
    {
        public List<MimeMessage> Taken { get; } = [];

        public override async Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            using var stream = new MemoryStream(buffer.ToArray());
            Taken.Add(await MimeMessage.LoadAsync(stream, cancellationToken));
            return SmtpResponse.Ok;
        }
    }
}
