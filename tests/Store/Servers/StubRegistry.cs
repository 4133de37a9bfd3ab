using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FleetWake.Store.Tests.Servers;

/// <summary>
/// Answers every HTTP request on a socket in one way, and keeps what was asked. Written by hand, because it has to do
/// what no server does: promise more than it sends, or say nothing at all.
/// </summary>
internal sealed class StubRegistry : IDisposable
{
    private readonly Socket _listening;
    private readonly Func<string, Reply?> _reply;
    private readonly CancellationTokenSource _end = new();

    private StubRegistry(EndPoint at, Func<string, Reply?> reply)
    {
        _reply = reply;
        _listening = new Socket(at.AddressFamily, SocketType.Stream, ProtocolType.Unspecified);
        _listening.Bind(at);
        _listening.Listen();
        _ = AcceptAsync();
    }

    /// <summary>The paths that were asked for, in their order.</summary>
    public List<string> Asked { get; } = [];

    public string Address => $"http://127.0.0.1:{((IPEndPoint)_listening.LocalEndPoint!).Port}/npm/";

    /// <summary>A registry that serves one file for whatever is asked.</summary>
    public static StubRegistry Serving(byte[] file) => new(new IPEndPoint(IPAddress.Loopback, 0), _ => new Reply(200, file, file.Length));

    /// <summary>A registry whose line breaks after the first half.</summary>
    public static StubRegistry BreakingOff(byte[] file) =>
        new(new IPEndPoint(IPAddress.Loopback, 0), _ => new Reply(200, file[..(file.Length / 2)], file.Length));

    public static StubRegistry Answering(int status) => new(new IPEndPoint(IPAddress.Loopback, 0), _ => new Reply(status, [], 0));

    /// <summary>Listens on a socket in the file system, as Docker's engine does.</summary>
    /// <param name="reply">By the path that was asked; null leaves the caller waiting.</param>
    public static StubRegistry OnSocket(string file, Func<string, Reply?> reply) => new(new UnixDomainSocketEndPoint(file), reply);

    private async Task AcceptAsync()
    {
        while (!_end.IsCancellationRequested)
        {
            Socket caller;
            try
            {
                caller = await _listening.AcceptAsync(_end.Token);
            }
            catch (Exception ended) when (ended is OperationCanceledException or SocketException or ObjectDisposedException)
            {
                return;
            }
            _ = AnswerAsync(caller);
        }
    }

    private async Task AnswerAsync(Socket caller)
    {
        await using var stream = new NetworkStream(caller, ownsSocket: true);
        using var reader = new StreamReader(stream, Encoding.ASCII, leaveOpen: true);
        string path = (await reader.ReadLineAsync(_end.Token))?.Split(' ')[1] ?? "";
        lock (Asked)
            Asked.Add(path);
        if (_reply(path) is not { } reply)
        {
            await Task.Delay(Timeout.Infinite, _end.Token);
            return;
        }
        string head = string.Create(CultureInfo.InvariantCulture,
            $"HTTP/1.1 {reply.Status} Said\r\nContent-Length: {reply.Promised}\r\nConnection: close\r\n\r\n");
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), _end.Token);
        await stream.WriteAsync(reply.Sent, _end.Token);
    }

    public void Dispose()
    {
        _end.Cancel();
        _listening.Dispose();
    }

    internal sealed record Reply(int Status, byte[] Sent, int Promised);
}
