using System.Diagnostics;
using Npgsql;

namespace FleetWake.Store.Servers;

/// <summary>A PostgreSQL of our own on this machine's loopback, gone when this program is.</summary>
public sealed class LocalServer : IAsyncDisposable
{
    private static readonly TimeSpan StartPatience = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan StopPatience = TimeSpan.FromSeconds(30);

    private readonly ServerBinaries _binaries;
    private readonly ServerFolder _folder;
    private readonly ServerLauncher _launcher;
    private readonly LocalServerOptions _options;
    private readonly TimeProvider _time;
    private readonly string _password;
    private ServerProcess? _process;

    private LocalServer(
        ServerBinaries binaries, ServerFolder folder, ServerLauncher launcher, LocalServerOptions options, TimeProvider time, string password)
    {
        (_binaries, _folder, _launcher, _options, _time, _password) = (binaries, folder, launcher, options, time, password);
    }

    public int Port { get; private set; }

    public string Folder => _folder.Path;

    /// <summary>The server's process number, null while it is stopped.</summary>
    public int? ProcessId => _process?.Id;

    public ServerSource Source => ServerSource.Local(_binaries, _options.Durable);

    public static Task<LocalServer> StartAsync(LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct) =>
        StartAsync(Machine.Real, options, say, time, ct);

    public static async Task<LocalServer> StartAsync(
        Machine machine, LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct) =>
        await StartAsync(await ServerSearch.FindOrInstallAsync(machine, say, time, ct), options, say, time, ct);

    internal static async Task<LocalServer> StartAsync(
        ServerBinaries binaries, LocalServerOptions options, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        ServerAccount? account = ServerAccount.ForThisProcess();
        var launcher = new ServerLauncher(account);
        await StaleFolders.CleanAsync(account, say, time);
        ServerFolder folder = ServerFolder.Take(options.DataFolder, account);
        LocalServer? server = null;
        try
        {
            string password = await Cluster.OpenOrMakeAsync(binaries, folder, launcher, options.Durable, time, ct);
            server = new LocalServer(binaries, folder, launcher, options, time, password);
            await server.RunOnSomePortAsync(ct);
            return server;
        }
        catch
        {
            // The folder is ours until the caller has a server to dispose.
            await (server is null ? folder.DisposeAsync() : server.DisposeAsync());
            throw;
        }
    }

    public string ConnectionString(string database) => new NpgsqlConnectionStringBuilder
    {
        Host = "127.0.0.1",
        Port = Port,
        Database = database,
        Username = Cluster.User,
        Password = _password,
        SslMode = SslMode.Disable, // one machine; each question about encryption is a round trip
        GssEncryptionMode = GssEncryptionMode.Disable,
    }.ConnectionString;

    /// <param name="template">A database to copy, schema and rows; nobody may be connected to it.</param>
    public Task CreateDatabaseAsync(string name, string? template = null, CancellationToken ct = default) =>
        Databases.CreateAsync(ConnectionString("postgres"), name, template, ct);

    /// <summary>Throws unless the running server keeps what it has committed. A durable start has asked already.</summary>
    public Task AssertDurableAsync(CancellationToken ct = default) => Cluster.AssertDurableAsync(ConnectionString("postgres"), ct);

    /// <summary>Ends the server and every connection, as an outage would, and keeps the data.</summary>
    public async Task StopAsync()
    {
        if (_process is not { } process)
            return;
        await process.StopAsync(() => AskToStop(process.Id), StopPatience, _time);
        _process = null;
    }

    /// <summary>On the same port, data and password, so that connection strings stay valid.</summary>
    public async Task StartAgainAsync(CancellationToken ct = default)
    {
        if (_process is { Ended.IsCompleted: false })
            throw new InvalidOperationException("The server is running.");
        await RunAsync(ct);
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        await _folder.DisposeAsync();
    }

    /// <summary>Somebody may take a free port before the server has it.</summary>
    private async Task RunOnSomePortAsync(CancellationToken ct)
    {
        for (int attempt = 1; ; attempt++)
        {
            Port = FreePort.Pick();
            try
            {
                await RunAsync(ct);
                return;
            }
            catch (ServerStartException failed) when (failed.PortTaken && attempt < 5)
            {
            }
        }
    }

    private async Task RunAsync(CancellationToken ct)
    {
        if (!await OrphanServer.EndAsync(_folder.Data, _time))
            throw new InvalidOperationException($"A process that may be a server still runs on {_folder.Data}.");
        _process = await ServerProcess.StartAsync(
            _launcher.Prepare(_binaries.Program("postgres"), _folder.Path, Cluster.Settings(_folder.Data, Port, _options.Durable)));
        try
        {
            await Task.WhenAny(_process.Ready, _process.Ended).WaitAsync(StartPatience, _time, ct);
        }
        catch (Exception late) when (late is TimeoutException or OperationCanceledException)
        {
            string log = _process.Log.ToString();
            await StopAsync();
            throw late is TimeoutException ? new ServerStartException($"PostgreSQL was not ready within {StartPatience}", log) : late;
        }
        if (!_process.Ready.IsCompleted)
        {
            string log = _process.Log.ToString();
            _process = null;
            throw new ServerStartException("PostgreSQL ended while starting", log);
        }
        if (_options.Durable)
            await AssertDurableAsync(ct);
    }

    private void AskToStop(int pid)
    {
        if (!OperatingSystem.IsWindows())
        {
            Libc.Signal(pid, Libc.Interrupt); // fast shutdown: connections are ended, transactions rolled back
            return;
        }
        using Process? asked = Process.Start(_binaries.Program("pg_ctl"), ["stop", "-m", "fast", "-W", "-D", _folder.Data]);
    }
}
