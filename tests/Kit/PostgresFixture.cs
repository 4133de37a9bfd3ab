using System.Collections.Concurrent;
using FleetWake.Store.Schema;
using FleetWake.Store.Servers;
using Npgsql;

namespace FleetWake.Tests.Kit;

/// <summary>
/// One PostgreSQL per test assembly: <c>[assembly: AssemblyFixture(typeof(PostgresFixture))]</c>. It starts with the
/// first database that is asked for, so a filtered run of pure tests starts none.
/// </summary>
public sealed class PostgresFixture : IAsyncDisposable
{
    private readonly SemaphoreSlim _turn = new(1);
    private readonly List<string> _made = [];
    private readonly ConcurrentDictionary<string, Lazy<Task<string>>> _prepared = [];
    private DatabaseServer? _server;

    /// <summary>A fresh database with the record's schema and nothing in it; a test takes one for itself.</summary>
    /// <param name="hint">Names the database, so that one found in a debugger tells whose it is.</param>
    public async Task<string> NewDatabaseAsync(string hint, CancellationToken ct = default)
    {
        string template = await PreparedAsync("schema", async () =>
        {
            string empty = await NewEmptyDatabaseAsync("schema", CancellationToken.None);
            await using var source = NpgsqlDataSource.Create(empty);
            await SchemaSteps.ApplyAsync(source, CancellationToken.None);
            return empty;
        }, ct);
        return await CreateAsync(hint, template, ct);
    }

    /// <summary>A fresh database without a schema.</summary>
    public Task<string> NewEmptyDatabaseAsync(string hint, CancellationToken ct = default) => CreateAsync(hint, template: null, ct);

    /// <summary>
    /// A copy of a database that was filled once in this run: a copy takes a twentieth of a second, a fleet takes seconds.
    /// </summary>
    /// <param name="hint">Names the copy.</param>
    /// <param name="filling">Names what is copied.</param>
    /// <param name="fill">Fills a database with the schema, for all who ask, and so by nobody's token; it is at rest afterwards.</param>
    public async Task<string> CopyAsync(string hint, string filling, Func<string, Task> fill, CancellationToken ct = default)
    {
        string template = await PreparedAsync(filling, async () =>
        {
            string filled = await NewDatabaseAsync(filling, CancellationToken.None);
            await fill(filled);
            return filled;
        }, ct);
        return await CreateAsync(hint, template, ct);
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

    /// <summary>Name of a database to copy, made by whoever asks first; where that failed, by whoever asks next.</summary>
    private async Task<string> PreparedAsync(string name, Func<Task<string>> make, CancellationToken ct)
    {
        var prepared = _prepared.GetOrAdd(name, _ => new(() => PrepareAsync(make)));
        try
        {
            return await prepared.Value.WaitAsync(ct);
        }
        catch when (prepared.Value is { IsFaulted: true } or { IsCanceled: true })
        {
            _prepared.TryRemove(KeyValuePair.Create(name, prepared));
            throw;
        }
    }

    private static async Task<string> PrepareAsync(Func<Task<string>> make)
    {
        var made = new NpgsqlConnectionStringBuilder(await make()) { Pooling = false };

        // What a program leaves idle would keep its database from being copied.
        await using var last = new NpgsqlConnection(made.ConnectionString);
        await last.OpenAsync();
        await using var alone = new NpgsqlCommand("select pg_terminate_backend(pid, 10000) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()", last);
        await alone.ExecuteNonQueryAsync();
        return made.Database!;
    }

    private async Task<string> CreateAsync(string hint, string? template, CancellationToken ct)
    {
        // One at a time: PostgreSQL copies a template for one caller only.
        await _turn.WaitAsync(ct);
        try
        {
            _server ??= await DatabaseServer.OpenAsync(
                new LocalServerOptions(DataFolder: null, Durable: false), Console.Error.WriteLine, TimeProvider.System, ct);
            string name = DatabaseName.For(hint);
            await _server.CreateDatabaseAsync(name, template, ct);
            _made.Add(name);

            // Many programs run side by side here, each with pools of its own: what one has done with, the others need.
            return _server.ConnectionString(name) + ";Connection Idle Lifetime=5;Connection Pruning Interval=2";
        }
        finally
        {
            _turn.Release();
        }
    }
}
