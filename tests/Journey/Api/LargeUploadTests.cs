using System.Net.Sockets;
using System.Text;
using FleetWake.Settings;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Api;

/// <summary>An upload of 200 MB is turned away without being read into memory, whether or not it says how long it is.</summary>
public sealed class LargeUploadTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const int Megabyte = 1024 * 1024;
    private const int Megabytes = 200;
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => fleet = await RunningFleet.StartAsync(
        await postgres.NewDatabaseAsync("upload", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task One_that_says_its_length_is_refused_before_a_byte_of_it_is_read()
    {
        var (answer, _) = await UploadAsync($"Content-Length: {(long)Megabytes * Megabyte}", frame: null);
        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);
        Assert.Contains("Send at most 4 MB", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_does_not_is_refused_when_it_passes_the_limit()
    {
        var (answer, sent) = await UploadAsync("Transfer-Encoding: chunked", b => [.. Encoding.ASCII.GetBytes($"{b.Length:x}\r\n"), .. b, .. "\r\n"u8]);
        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);

        // What went out beyond the limit lay in the sockets' buffers: nobody read it.
        Assert.InRange(sent, 4, 40);
    }

    /// <summary>Sends until the program answers, and returns the answer with how many megabytes had gone out. Written by hand: a client hides who spoke first.</summary>
    private async Task<(string Answer, int Sent)> UploadAsync(string length, Func<byte[], byte[]>? frame)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(fleet.Http.BaseAddress!.Host, fleet.Http.BaseAddress.Port, Ct);
        var stream = socket.GetStream();
        var key = fleet.Http.DefaultRequestHeaders.Authorization!.Parameter;
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /api/records HTTP/1.1\r\nHost: {fleet.Http.BaseAddress.Authority}\r\nAuthorization: Bearer {key}\r\nContent-Type: application/json\r\n{length}\r\n\r\n"), Ct);
        var answer = ReadAsync(stream);

        // Without a frame not a byte of the body goes out, so an answer cannot have come from reading it.
        if (frame is null) return (await answer, 0);
        var block = frame([.. Enumerable.Repeat((byte)' ', Megabyte)]);
        var sent = 0;
        try
        {
            for (; sent < Megabytes && !answer.IsCompleted; sent++) await stream.WriteAsync(block, Ct);
        }
        catch (IOException)
        {
            // The program has closed the door.
        }

        return (await answer, sent);
    }

    private static async Task<string> ReadAsync(NetworkStream stream)
    {
        var text = new StringBuilder();
        var buffer = new byte[4096];
        try
        {
            while (await stream.ReadAsync(buffer, Ct) is > 0 and var read)
            {
                text.Append(Encoding.UTF8.GetString(buffer, 0, read));
                if (text.ToString().Contains("\"detail\"", StringComparison.Ordinal)) break;
            }
        }
        catch (IOException)
        {
            // Reset behind the answer, for bytes that nobody read.
        }

        return text.ToString();
    }
}
