using FleetWake.Store.Servers;

namespace FleetWake.Tests.Kit;

/// <summary>
/// A server that a test takes down and brings back on the same port with the same data. Never the one that
/// FLEETWAKE_DB names, nor the assembly's own: others are using those. Runs durable, since what survives is the question.
/// </summary>
public sealed class RestartableServer : IAsyncDisposable
{
    private readonly LocalServer _server;

    private RestartableServer(LocalServer server) => _server = server;

    public static async Task<RestartableServer> StartAsync(CancellationToken ct = default) => new(
        await LocalServer.StartAsync(new LocalServerOptions(DataFolder: null, Durable: true), Console.Error.WriteLine, TimeProvider.System, ct));

    public async Task<string> NewDatabaseAsync(string hint, CancellationToken ct = default)
    {
        string name = DatabaseName.For(hint);
        await _server.CreateDatabaseAsync(name, ct: ct);
        return _server.ConnectionString(name);
    }

    public Task StopAsync() => _server.StopAsync();

    public Task StartAgainAsync(CancellationToken ct = default) => _server.StartAgainAsync(ct);

    public ValueTask DisposeAsync() => _server.DisposeAsync();
}
