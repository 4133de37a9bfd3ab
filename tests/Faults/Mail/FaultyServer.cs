using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FleetWake.Faults.Tests.Mail;

/// <summary>
/// A mail server for many connections that treats each recipient by the first word of its address, e.g. <c>later-17@bay.example</c>, and
/// counts the copies that it keeps. What it does to a message it does at the first offers and then takes it.
/// </summary>
internal sealed class FaultyServer : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly ConcurrentDictionary<string, int> offers = new();
    private readonly ConcurrentDictionary<string, int> kept = new();
    private readonly ConcurrentQueue<string> lines = new();
    private readonly Task accepting;

    public FaultyServer()
    {
        listener.Start();
        accepting = AcceptAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>Copies kept, by recipient.</summary>
    public IReadOnlyDictionary<string, int> Kept => kept;

    /// <summary>Offers, by recipient.</summary>
    public IReadOnlyDictionary<string, int> Offers => offers;

    /// <summary>Every command that was heard.</summary>
    public IReadOnlyCollection<string> Lines => lines;

    /// <summary>Called at each step of a message, with the step's name and the recipient.</summary>
    public Action<string, string>? At { get; set; }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await accepting;
        stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        var talks = new List<Task>();
        try
        {
            while (true)
            {
                talks.Add(TalkAsync(await listener.AcceptTcpClientAsync(stop.Token)));
                talks.RemoveAll(t => t.IsCompleted);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            await Task.WhenAll(talks);
        }
    }

    private async Task TalkAsync(TcpClient client)
    {
        using (client)
        {
            try
            {
                await SpeakAsync(client.GetStream());
            }
            catch (Exception e) when (e is OperationCanceledException or IOException or SocketException or ObjectDisposedException)
            {
                // The other side has gone, or the test is over.
            }
        }
    }

    private async Task SpeakAsync(NetworkStream stream)
    {
        using var reader = new StreamReader(stream, Encoding.Latin1, leaveOpen: true);
        Task Say(string line) => stream.WriteAsync(Encoding.Latin1.GetBytes(line + "\r\n"), stop.Token).AsTask();
        await Say("220 mail.example");
        var to = "";
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            lines.Enqueue(line);
            var verb = line.Split(' ', ':')[0].ToUpperInvariant();
            At?.Invoke(verb, to);
            if (verb == "RCPT")
            {
                to = line.Split('<', '>')[1];
                var offer = offers.AddOrUpdate(to, 1, (_, n) => n + 1);
                if (to.StartsWith("tarpit-", StringComparison.Ordinal)) await Task.Delay(Timeout.Infinite, stop.Token);
                await Say(Answer(to, offer));
            }
            else if (verb == "DATA")
            {
                await Say("354 go on");
                string? text;
                while ((text = await reader.ReadLineAsync(stop.Token)) is not null && text != ".")
                {
                    if (text.StartsWith("Bcc:", StringComparison.OrdinalIgnoreCase)) lines.Enqueue(text);
                }

                // Without its end it is no message (RFC 5321, 4.1.1.4).
                if (text is null) return;

                At?.Invoke("TEXT", to);

                // Whether a copy is kept before the line breaks is all the difference, and the sender cannot know it.
                if (Word(to) == "cutbefore" && offers[to] == 1) return;
                kept.AddOrUpdate(to, 1, (_, n) => n + 1);
                if (Word(to) == "cutafter" && offers[to] == 1) return;
                await Say("250 2.0.0 queued");
                At?.Invoke("TAKEN", to);
            }
            else
            {
                await Say(verb switch { "QUIT" => "221 bye", "EHLO" => "250 mail.example", _ => "250 fine" });
                if (verb == "QUIT") return;
            }
        }
    }

    private static string Answer(string to, int offer) => (Word(to), offer) switch
    {
        ("later", 1) => "421 4.3.2 come back",
        ("later", <= 5) => offer % 2 == 0 ? "451 4.7.1 greylisted" : "421 4.3.2 come back",
        ("full", <= 2) => "452 4.2.2 mailbox full",
        ("gone", _) => "550 5.1.1 no such user",
        _ => "250 fine",
    };

    private static string Word(string address) => address.Split('-')[0];
}
