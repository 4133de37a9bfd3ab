using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Threading.Channels;
using FleetWake.Reports.Mail;
using FleetWake.Settings;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace FleetWake.Tests.Program;

/// <summary>A mail server on loopback that keeps what it is given, or refuses it as told.</summary>
public sealed class Mailbox : MessageStore, IAsyncDisposable
{
    private readonly Channel<MimeMessage> messages = Channel.CreateUnbounded<MimeMessage>();
    private readonly CancellationTokenSource stop = new();
    private readonly Task running;

    private Mailbox(int port)
    {
        Port = port;
        var services = new ServiceProvider();
        services.Add((IMessageStore)this);
        var options = new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(e => e.Endpoint(new IPEndPoint(IPAddress.Loopback, port))).Build();
        running = new SmtpServer.SmtpServer(options, services).StartAsync(stop.Token);
    }

    public int Port { get; }

    /// <summary>Settings that send to this mailbox.</summary>
    public MailSettings Settings => new(
        "digest@fleetwake.example", "unused", new SmtpSettings("127.0.0.1", Port, SmtpSecurity.None, null, null, TimeSpan.FromSeconds(5)));

    /// <summary>What the server answers to the next messages, one after the other; nothing means that it takes them.</summary>
    public Queue<SmtpResponse> Answers { get; } = new();

    /// <summary>How often a message was offered.</summary>
    public int Offered { get; private set; }

    public static Mailbox Open(int port) => new(port);

    public static Mailbox Open()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        var port = ((IPEndPoint)probe.LocalEndpoint).Port;
        probe.Stop();
        return new Mailbox(port);
    }

    public async Task<MimeMessage> NextAsync(CancellationToken ct)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(ct);
        patience.CancelAfter(TimeSpan.FromSeconds(60));
        return await messages.Reader.ReadAsync(patience.Token);
    }

    public override async Task<SmtpResponse> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        Offered++;
        if (Answers.TryDequeue(out var answer)) return answer;
        using var bytes = new MemoryStream(buffer.ToArray());
        await messages.Writer.WriteAsync(await MimeMessage.LoadAsync(bytes, cancellationToken), cancellationToken);
        return SmtpResponse.Ok;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        stop.Dispose();
    }
}
