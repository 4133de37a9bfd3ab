using FleetWake.Store.Servers;

namespace FleetWake.Tests.Kit;

/// <summary>
/// One PostgreSQL per test assembly: <c>[assembly: AssemblyFixture(typeof(PostgresFixture))]</c>. It starts with the
/// first database that is asked for, so a filtered run of pure tests starts none.
/// </summary>
public sealed class PostgresFixture : IAsyncDisposable
{
    private readonly SemaphoreSlim _turn = new(1);
    private readonly List<string> _made = [];
    private DatabaseServer? _server;

    /// <summary>A fresh, empty database; a test class takes one for itself.</summary>
    /// <param name="hint">Names the database, so that one found in a debugger tells whose it is.</param>
    public async Task<string> NewDatabaseAsync(string hint, CancellationToken ct = default)
    {
        // One at a time: PostgreSQL copies a template for one caller only.
        await _turn.WaitAsync(ct);
        try
        {
            _server ??= await DatabaseServer.OpenAsync(
                new LocalServerOptions(DataFolder: null, Durable: false), Console.Error.WriteLine, TimeProvider.System, ct);
            string name = DatabaseName.For(hint);
            await _server.CreateDatabaseAsync(name, ct: ct);
            _made.Add(name);

            // Many programs run side by side here, each with pools of its own: what one has done with, the others need.
            return _server.ConnectionString(name) + ";Connection Idle Lifetime=5;Connection Pruning Interval=2";
        }
        finally
        {
            _turn.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
        {
            foreach (string name in _server.IsOwn ? [] : _made)
                await _server.DropDatabaseAsync(name);
            await _server.DisposeAsync();
        }
        _turn.Dispose();
    }
}
