using FleetWake.Store.Servers.Containers;
using Npgsql;

namespace FleetWake.Store.Servers;

/// <summary>The PostgreSQL that this run uses: the one that FLEETWAKE_DB names, else a private one of our own.</summary>
public sealed class DatabaseServer : IAsyncDisposable
{
    private readonly Func<string, string> _connection;
    private readonly string _admin;
    private readonly IAsyncDisposable? _own;

    private DatabaseServer(ServerSource source, Func<string, string> connection, string admin, IAsyncDisposable? own)
    {
        (Source, _connection, _admin, _own) = (source, connection, admin, own);
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
            return await NamedAsync(named, ct);
        ServerBinaries? binaries = await ServerSearch.FindAsync(machine, say, time, ct);
        if (binaries is null && await ContainedAsync(machine, options, say, time, ct) is { } contained)
            return contained;
        binaries ??= await ServerSearch.InstallAsync(machine, say, time, ct);
        LocalServer own = await LocalServer.StartAsync(binaries, options, say, time, ct);
        return new DatabaseServer(own.Source, own.ConnectionString, own.ConnectionString("postgres"), own);
    }

    /// <summary>The database that was named is the one where its user surely may connect.</summary>
    private static async Task<DatabaseServer> NamedAsync(string named, CancellationToken ct) => new(
        await LookAtAsync(named, ct),
        database => new NpgsqlConnectionStringBuilder(named) { Database = database }.ConnectionString,
        named,
        own: null);

    private static async Task<DatabaseServer?> ContainedAsync(
        Machine machine, LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        var choice = SourceChoice.Of(machine);
        if (!choice.Allows(SourceChoice.Docker))
            return null;
        try
        {
            ContainerServer own = await ContainerServer.StartAsync(machine, options, say, time, ct);
            return new DatabaseServer(own.Source, own.ConnectionString, own.ConnectionString("postgres"), own);
        }
        catch (ContainerException none)
        {
            choice.PassOver(SourceChoice.Docker, none.Message, say);
            return null;
        }
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

    public string ConnectionString(string database) => _connection(database);

    /// <param name="template">A database to copy, schema and rows; nobody may be connected to it.</param>
    public Task CreateDatabaseAsync(string name, string? template = null, CancellationToken ct = default) =>
        Databases.CreateAsync(_admin, name, template, ct);

    public Task DropDatabaseAsync(string name, CancellationToken ct = default) => Databases.DropAsync(_admin, name, ct);

    public ValueTask DisposeAsync() => _own?.DisposeAsync() ?? ValueTask.CompletedTask;
}
