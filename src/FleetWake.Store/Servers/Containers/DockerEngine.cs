using System.IO.Pipes;
using System.Net;
using System.Net.Sockets;

namespace FleetWake.Store.Servers.Containers;

/// <summary>
/// Looks for a Docker engine that answers. The command docker being there proves nothing, and the client library waits
/// without end for an engine that is dead, so it is asked here first and with a limit.
/// </summary>
internal static class DockerEngine
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    public static IReadOnlyList<Uri> UsualSockets { get; } = [.. Usual().Select(address => new Uri(address))];

    /// <summary>The first engine that answers; DOCKER_HOST, when set, is the only one asked.</summary>
    public static async Task<Uri?> FindAsync(Machine machine, TimeProvider time, CancellationToken ct)
    {
        IReadOnlyList<Uri> engines = machine.Variable("DOCKER_HOST") is not { } named ? machine.DockerSockets
            : Uri.TryCreate(named, UriKind.Absolute, out Uri? address) ? [address]
            : [];
        foreach (Uri engine in engines)
        {
            if (await AnswersAsync(engine, time, ct))
                return engine;
        }
        return null;
    }

    private static async Task<bool> AnswersAsync(Uri engine, TimeProvider time, CancellationToken ct)
    {
        using var patience = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, patience.Token);
        try
        {
            using var http = new HttpClient(new SocketsHttpHandler
            {
                UseProxy = false,
                ConnectCallback = (_, token) => ConnectAsync(engine, token),
            });
            using HttpResponseMessage response = await http.GetAsync(new Uri("http://docker/_ping"), either.Token);
            return response.StatusCode == HttpStatusCode.OK;
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            return false;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }

    private static async ValueTask<Stream> ConnectAsync(Uri engine, CancellationToken ct)
    {
        if (engine.Scheme == "npipe")
        {
            var pipe = new NamedPipeClientStream(engine.Host, engine.Segments[^1], PipeDirection.InOut, PipeOptions.Asynchronous);
            await pipe.ConnectAsync(ct);
            return pipe;
        }
        EndPoint end = engine.Scheme switch
        {
            "unix" => new UnixDomainSocketEndPoint(engine.LocalPath),
            "tcp" or "http" => new DnsEndPoint(engine.Host, engine.Port),
            _ => throw new HttpRequestException($"An engine at {engine} is not asked."),
        };
        var socket = new Socket(end is DnsEndPoint ? AddressFamily.InterNetwork : AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        try
        {
            await socket.ConnectAsync(end, ct);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    private static IEnumerable<string> Usual()
    {
        if (OperatingSystem.IsWindows())
            return ["npipe://./pipe/docker_engine"];
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        string? running = Environment.GetEnvironmentVariable("XDG_RUNTIME_DIR");
        return
        [
            "unix:///var/run/docker.sock",
            .. running is { Length: > 0 } ? new[] { $"unix://{running}/docker.sock" } : [],
            $"unix://{home}/.docker/run/docker.sock", $"unix://{home}/.docker/desktop/docker.sock",
        ];
    }
}
