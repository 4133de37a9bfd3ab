using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Testcontainers.PostgreSql;
using PortBinding = Docker.DotNet.Models.PortBinding;

namespace FleetWake.Store.Servers.Containers;

/// <summary>A PostgreSQL in a Docker container of our own, gone when this program is (the library's reaper sees to that).</summary>
internal sealed class ContainerServer : IAsyncDisposable
{
    private const string Image = "postgres:17";

    // Most of it is for the image, the first time.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    private readonly PostgreSqlContainer _container;

    private ContainerServer(PostgreSqlContainer container, ServerSource source) => (_container, Source) = (container, source);

    public ServerSource Source { get; }

    /// <exception cref="ContainerException">Why there is none.</exception>
    public static async Task<ContainerServer> StartAsync(
        Machine machine, LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        if (options.DataFolder is not null)
            throw new ContainerException("a container keeps no data folder");
        Uri engine = await DockerEngine.FindAsync(machine, time, ct) ?? throw new ContainerException("no Docker engine answers");
        say($"Starting the image {Image} in Docker at {engine}.");
        using var patience = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, patience.Token);
        try
        {
            return await StartAsync(engine, options.Durable, either.Token);
        }
        catch (Exception failed) when (!ct.IsCancellationRequested)
        {
            string why = patience.IsCancellationRequested ? $"not ready within {Patience.TotalMinutes} minutes" : failed.Message.Split('\n')[0].TrimEnd('.', '\r');
            throw new ContainerException($"the container did not start ({why})");
        }
    }

    private static async Task<ContainerServer> StartAsync(Uri engine, bool durable, CancellationToken ct)
    {
        PostgreSqlContainer container = Described(engine, durable).Build();
        try
        {
            await container.StartAsync(ct);
            string connection = Connection(container, "postgres");
            if (durable)
                await Cluster.AssertDurableAsync(connection, ct);
            Version version = ServerVersion.Parse(await Databases.AskAsync(connection, "SHOW server_version", ct))!;
            return new ContainerServer(container, ServerSource.Container(version, Image, engine, durable));
        }
        catch
        {
            await container.DisposeAsync();
            throw;
        }
    }

    private static PostgreSqlBuilder Described(Uri engine, bool durable)
    {
        // The library's own choice is a server that may lose everything; what is said last counts.
        IEnumerable<string> settings = LocalServerOptions.Safeguards.Select(name => $"{name}={(durable ? "on" : "off")}")
            .Append($"max_connections={LocalServerOptions.Connections}");
        PostgreSqlBuilder described = new PostgreSqlBuilder(Image)
            .WithDockerEndpoint(engine)
            .WithLogger(NullLogger.Instance) // it would write into our output
            .WithUsername(Cluster.User)
            .WithPassword(Secret.Text(40))
            .WithCommand([.. settings.SelectMany(setting => new[] { "-c", setting })]);
        // An engine on this machine is reached on its loopback; without this the port is open to the whole network.
        return engine.Scheme is not ("unix" or "npipe") ? described : described.WithCreateParameterModifier(create =>
        {
            foreach (PortBinding binding in create.HostConfig?.PortBindings.Values.SelectMany(bindings => bindings) ?? [])
                binding.HostIP = "127.0.0.1";
        });
    }

    public string ConnectionString(string database) => Connection(_container, database);

    private static string Connection(PostgreSqlContainer container, string database) =>
        new NpgsqlConnectionStringBuilder(container.GetConnectionString()) { Database = database }.ConnectionString;

    public ValueTask DisposeAsync() => _container.DisposeAsync();
}
