using System.Buffers;
using System.Net;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using FleetWake.Reports.Mail;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>A mail server with a certificate, that notes whether each message and each sign-in came over a secured connection.</summary>
internal sealed class SecuredServer : MessageStore, IUserAuthenticator, IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly Task running;
    private readonly List<bool> taken = [];
    private readonly List<bool> signIns = [];

    public SecuredServer(X509Certificate2 certificate, SmtpSecurity security)
    {
        using (var probe = new TcpListener(IPAddress.Loopback, 0))
        {
            probe.Start();
            Port = ((IPEndPoint)probe.LocalEndpoint).Port;
        }

        var services = new ServiceProvider();
        services.Add((IMessageStore)this);
        services.Add((IUserAuthenticator)this);
        var options = new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(e => e
            .Endpoint(new IPEndPoint(IPAddress.Loopback, Port))
            .Certificate(certificate)
            .IsSecure(security == SmtpSecurity.Tls)
            .SupportedSslProtocols(SslProtocols.Tls12 | SslProtocols.Tls13)).Build();
        running = new SmtpServer.SmtpServer(options, services).StartAsync(stop.Token);
    }

    public int Port { get; }

    /// <summary>For each message taken, whether it came secured.</summary>
    public IReadOnlyList<bool> Taken => taken;

    /// <summary>For each sign-in, whether it came secured.</summary>
    public IReadOnlyList<bool> SignIns => signIns;

    public override Task<SmtpResponse> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        taken.Add(context.Pipe.IsSecure);
        return Task.FromResult(SmtpResponse.Ok);
    }

    public Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken)
    {
        signIns.Add(context.Pipe.IsSecure);
        return Task.FromResult(user == "fleet" && password == "right");
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        stop.Dispose();
    }
}
