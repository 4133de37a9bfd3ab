using FleetWake.Store.Servers;
using Npgsql;

namespace FleetWake.Store.Tests.Servers;

/// <summary>The words that the tests of this folder speak in.</summary>
internal static class Server
{
    public static readonly LocalServerOptions Quick = new(DataFolder: null, Durable: false);

    public static Task<LocalServer> StartAsync(LocalServerOptions options, Action<string>? say = null) =>
        LocalServer.StartAsync(options, say ?? (_ => { }), TimeProvider.System, TestContext.Current.CancellationToken);

    public static async Task<string> AskAsync(string connection, string question)
    {
        await using var opened = new NpgsqlConnection(connection + ";Pooling=false");
        await opened.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = new NpgsqlCommand(question, opened);
        return Convert.ToString(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))!;
    }

    public static Task<string> AskAsync(LocalServer server, string question) => AskAsync(server.ConnectionString("postgres"), question);

    /// <summary>Whether a process of this number runs; a zombie that nobody has collected yet does not.</summary>
    public static bool Runs(int pid) =>
        File.Exists($"/proc/{pid}/status") && !File.ReadAllText($"/proc/{pid}/status").Contains("State:\tZ", StringComparison.Ordinal);

    public static async Task UntilAsync(Func<bool> holds, string what)
    {
        for (int attempt = 0; !holds(); attempt++)
        {
            Assert.True(attempt < 200, $"Not within 10 seconds: {what}");
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>A machine on which nothing is installed, but for what a test adds.</summary>
    public static Machine Bare(params string[] system) => new(_ => null, _ => [], _ => null, system, IsRoot: false);
}
