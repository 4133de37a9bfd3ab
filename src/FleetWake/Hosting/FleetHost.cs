using FleetWake.Settings;
using FleetWake.Store.Findings;
using FleetWake.Store.Fleet;
using FleetWake.Store.Nodes;
using FleetWake.Store.Schema;
using FleetWake.Store.Telemetry;
using FleetWake.Ticks;
using FleetWake.Web;
using FleetWake.Web.Health;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetWake.Hosting;

/// <summary>Builds the program for its roles: serve (the web room), work (daemon, findings, fits, digests, mail), or both.</summary>
public static class FleetHost
{
    /// <summary>Longest wait for work in hand when the program is asked to stop.</summary>
    public static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(15);

    /// <summary>A host that is not started yet.</summary>
    /// <param name="settings">Settings.</param>
    /// <param name="database">Connection string of the record.</param>
    /// <param name="roles">What this process does.</param>
    /// <param name="time">The clock.</param>
    /// <param name="ticks">How often the ticks come.</param>
    /// <param name="quiet">Log warnings only.</param>
    public static WebApplication Build(FleetSettings settings, string database, Roles roles, TimeProvider time, TickSettings ticks, bool quiet = false)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().UseUrls(Listening(settings, roles).Urls);
        builder.Logging.ClearProviders().AddSimpleConsole(o => o.SingleLine = true);
        builder.Logging.SetMinimumLevel(quiet ? LogLevel.Error : LogLevel.Information);
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting", LogLevel.Critical);
        foreach (var chatty in (string[])["Microsoft.AspNetCore", "Quartz", "Marten", "JasperFx", "Microsoft.Hosting.Lifetime"])
            builder.Logging.AddFilter(chatty, quiet ? LogLevel.Error : LogLevel.Warning);

        // A lost race for a stream is an everyday thing that the recorder settles; what is not, its caller logs.
        builder.Logging.AddFilter("Marten.IDocumentStore", LogLevel.Critical);
        // A rollback that cannot be made follows a fault that was told already, or the end of the program.
        builder.Logging.AddFilter("Quartz.Impl.AdoJobStore.ConnectionAndTransactionHolder", LogLevel.Critical);

        builder.Services.Configure<HostOptions>(o => o.ShutdownTimeout = StopWithin);
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton(settings);
        var node = NodeId.Make();
        var source = NpgsqlDataSource.Create(Pooled(database, node, roles.HasFlag(Roles.Serve) ? 40 : 15));
        builder.Services.AddFleetStore(source, daemon: roles.HasFlag(Roles.Work));
        var beats = NpgsqlDataSource.Create(Pooled(database, node, 3));
        builder.Services.AddFleetNodes(new NodeSettings(node, Words(roles), Version), beats);
        builder.Services.AddFleetHealth();
        builder.Services.AddFleetTelemetry(builder.Configuration, node, Version);
        builder.Services.AddFleetLayouts(settings);
        builder.Services.AddFleetSender(settings);
        if (roles.HasFlag(Roles.Serve)) builder.Services.AddFleetWeb(settings.PublicUrl);
        if (roles.HasFlag(Roles.Work))
        {
            builder.Services.AddFleetReports(settings);
            builder.Services.AddSingleton<FindingStep>();
            builder.Services.AddSingleton<FleetFitStep>();
            builder.Services.AddHostedService<FindingWorker>();
            builder.Services.AddHostedService<WorkStateGauges>();
            builder.Services.AddTicks(Pooled(database, node, 10), node.Value, ticks);
        }

        var app = builder.Build();
        app.Lifetime.ApplicationStopped.Register(source.Dispose);
        app.Lifetime.ApplicationStopped.Register(beats.Dispose);
        if (roles.HasFlag(Roles.Serve)) app.UseFleetWeb();
        app.MapHealth();
        return app;
    }

    /// <summary>Starts a host; a port that is taken is told with what to do.</summary>
    public static async Task BeginAsync(WebApplication app, FleetSettings settings, Roles roles, CancellationToken ct)
    {
        try
        {
            await app.StartAsync(ct);
        }
        catch (IOException e) when (e.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            var (urls, setting) = Listening(settings, roles);
            throw new SettingsException($"{urls} is taken by another program: stop that one, or set {setting}, e.g. {setting}=http://127.0.0.1:5090.");
        }
    }

    /// <summary>
    /// Stops a host and lets go of it. A scheduler whose database is away would wait for it without end when stopped;
    /// nothing it could still do matters more than the end of the program, so that wait has a limit.
    /// </summary>
    public static async Task EndAsync(WebApplication app)
    {
        await WithinAsync(app.StopAsync(CancellationToken.None));
        await WithinAsync(app.DisposeAsync().AsTask());
    }

    private static async Task WithinAsync(Task ending)
    {
        try
        {
            await ending.WaitAsync(StopWithin);
        }
        catch (Exception e)
        {
            // Whatever failed while ending, the end must come; receipts, leases and keys make a hard stop harmless.
            await Console.Error.WriteLineAsync($"fleetwake: not everything ended well ({e.GetType().Name}); what was in hand is taken up again at the next start.");
        }
    }

    private static string Version { get; } = typeof(FleetHost).Assembly.GetName().Version?.ToString(3) ?? "0";

    /// <summary>
    /// Pools are capped, so that one process cannot take every connection the server has. The beat has a pool of its own
    /// (one for it, one for a probe, one for the gauges): a node that is merely busy must not look dead. Each session carries the node's id (see <see cref="NodeId"/>).
    /// </summary>
    private static string Pooled(string database, NodeId node, int most)
    {
        var connection = new NpgsqlConnectionStringBuilder(database) { ApplicationName = node.ApplicationName };
        connection.MaxPoolSize = Math.Min(connection.MaxPoolSize, most);
        return connection.ConnectionString;
    }

    private static (string Urls, string Setting) Listening(FleetSettings settings, Roles roles) =>
        roles.HasFlag(Roles.Serve) ? (settings.Urls, "FLEETWAKE_URLS") : (settings.HealthUrls ?? "http://127.0.0.1:0", "FLEETWAKE_HEALTH_URLS");

    private static string Words(Roles roles) => string.Join(' ', Enum.GetValues<Roles>().Where(r => roles.HasFlag(r)).Select(r => r.ToString().ToLowerInvariant()));
}

/// <summary>What a process does.</summary>
[Flags]
public enum Roles
{
    /// <summary>Answers the API.</summary>
    Serve = 1,

    /// <summary>Folds streams, assesses boats, fits fleets, issues digests and sends mail.</summary>
    Work = 2,
}
