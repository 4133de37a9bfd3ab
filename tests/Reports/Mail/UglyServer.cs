using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FleetWake.Reports.Tests.Mail;

/// <summary>
/// A mail server that answers by script: a verb's answer, <c>cut</c> to close the connection, <c>silence</c> to say nothing
/// more. The end of the text is asked for as <c>.</c>, the greeting as the empty verb.
/// </summary>
internal sealed class UglyServer : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly Dictionary<string, string> script;
    private readonly Task serving;
    private readonly System.Collections.Concurrent.ConcurrentQueue<string> verbs = new();
    private readonly System.Collections.Concurrent.ConcurrentQueue<string> lines = new();
    private readonly TaskCompletionSource silent = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public UglyServer(params (string Verb, string Answer)[] script)
    {
        this.script = script.ToDictionary(s => s.Verb, s => s.Answer);
        listener.Start();
        serving = Serve();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>The verbs that were heard, in order.</summary>
    public IReadOnlyCollection<string> Verbs => verbs;

    /// <summary>Every line that was heard, in order.</summary>
    public IReadOnlyCollection<string> Lines => lines;

    /// <summary>Ends when the server has begun to be silent.</summary>
    public Task Silent => silent.Task;

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await serving;
        stop.Dispose();
    }

    private async Task Serve()
    {
        try
        {
            using var client = await listener.AcceptTcpClientAsync(stop.Token);
            using var reader = new StreamReader(client.GetStream(), Encoding.Latin1);
            if (!await Answer(client, "", "220 mail.example")) return;
            var inText = false;
            while (await reader.ReadLineAsync(stop.Token) is { } line)
            {
                lines.Enqueue(line);
                if (inText && line != ".")
                {
                    if (script.GetValueOrDefault("TEXT") == "cut") return;
                    continue;
                }

                var verb = inText ? "." : line.Split(' ', ':')[0].ToUpperInvariant();
                verbs.Enqueue(verb);
                inText = verb == "DATA" && !script.ContainsKey("DATA");
                if (!await Answer(client, verb, verb switch { "DATA" => "354 go on", "QUIT" => "221 bye", _ => "250 fine" })) return;
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException or SocketException or ObjectDisposedException)
        {
            // The other side has gone, or the test is over.
        }
    }

    private async Task<bool> Answer(TcpClient client, string verb, string usual)
    {
        var answer = script.GetValueOrDefault(verb, usual);
        if (answer == "silence")
        {
            silent.TrySetResult();
            await Task.Delay(Timeout.Infinite, stop.Token);
        }

        if (answer == "cut") return false;
        await client.GetStream().WriteAsync(Encoding.Latin1.GetBytes(answer + "\r\n"), stop.Token);
        return true;
    }
}
