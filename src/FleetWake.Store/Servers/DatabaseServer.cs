using Npgsql;

namespace FleetWake.Store.Servers;

/// <summary>The PostgreSQL that this run uses: the one that FLEETWAKE_DB names, else a private one of our own.</summary>
public sealed class DatabaseServer : IAsyncDisposable
{
    private readonly string? _named;
    private readonly LocalServer? _own;

    private DatabaseServer(string? named, LocalServer? own, ServerSource source)
    {
        (_named, _own, Source) = (named, own, source);
    }

    public ServerSource Source { get; }

    /// <summary>Whether the databases go with this object; on a named server they stay until dropped.</summary>
    public bool IsOwn => _own is not null;

    public static Task<DatabaseServer> OpenAsync(LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct) =>
        OpenAsync(Machine.Real, options, say, time, ct);

    public static async Task<DatabaseServer> OpenAsync(
        Machine machine, LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        if (machine.Variable("FLEETWAKE_DB") is { } named)
            return new DatabaseServer(named, null, await LookAtAsync(named, ct));
        LocalServer own = await LocalServer.StartAsync(machine, options, say, time, ct);
        return new DatabaseServer(null, own, own.Source);
    }

    /// <summary>Whoever named a server wants that one: when it does not answer, no other is taken in its place.</summary>
    private static async Task<ServerSource> LookAtAsync(string named, CancellationToken ct)
    {
        var parts = new NpgsqlConnectionStringBuilder(named);
        Version? version = ServerVersion.Parse(await Databases.AskAsync(named, "SHOW server_version", ct));
        if (version is null || version.Major < ServerBinaries.OldestMajor)
            throw new ServerNotFoundException($"FLEETWAKE_DB names PostgreSQL {version}; {ServerBinaries.OldestMajor} or newer is needed.");
        return ServerSource.Named(version, parts.Host, parts.Port);
    }

    public string ConnectionString(string database) =>
        _own?.ConnectionString(database) ?? new NpgsqlConnectionStringBuilder(_named) { Database = database }.ConnectionString;

    /// <param name="template">A database to copy, schema and rows; nobody may be connected to it.</param>
    public Task CreateDatabaseAsync(string name, string? template = null, CancellationToken ct = default) =>
        Databases.CreateAsync(AdminConnection, name, template, ct);

    public Task DropDatabaseAsync(string name, CancellationToken ct = default) => Databases.DropAsync(AdminConnection, name, ct);

    // The database that FLEETWAKE_DB names is the one where its user surely may connect.
    private string AdminConnection => _named ?? _own!.ConnectionString("postgres");

    public ValueTask DisposeAsync() => _own?.DisposeAsync() ?? ValueTask.CompletedTask;
}
