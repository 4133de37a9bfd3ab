using FleetWake.Settings;
using FleetWake.Store.Schema;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;
using Npgsql;

namespace FleetWake.Hosting;

/// <summary>Runs a role until it is asked to stop.</summary>
internal static class Starting
{
    public static async Task<int> RunAsync(Roles roles, bool applySchema, CancellationToken ct)
    {
        var settings = FleetSettings.FromEnvironment();
        var database = settings.NeedDatabase();
        await PrepareAsync(database, applySchema, ct);
        var app = FleetHost.Build(settings, database, roles, TimeProvider.System, Ticks.TickSettings.Usual);
        await FleetHost.BeginAsync(app, settings, roles, ct);
        Console.WriteLine(roles.HasFlag(Roles.Serve)
            ? $"fleetwake: serving on {string.Join(" ", app.Urls)}; office at {Office(settings, app.Urls.First())}, API description at /openapi/v1.json. Ctrl-C stops it."
            : $"fleetwake: working (streams, findings, digests, mail); {(settings.HealthUrls is null ? "no health address" : $"health at {app.Urls.First()}/health/ready")}. Ctrl-C stops it.");
        await WaitAsync(app, ct);
        await FleetHost.EndAsync(app);
        return 0;
    }

    /// <summary>Where people find the office: under the public address, else on this machine by its name, for passkeys belong to names.</summary>
    public static string Office(FleetSettings settings, string url) =>
        (settings.PublicUrl?.AbsoluteUri.TrimEnd('/') ?? url.Replace("//127.0.0.1", "//localhost", StringComparison.Ordinal).Replace("//[::]", "//localhost", StringComparison.Ordinal).Replace("//0.0.0.0", "//localhost", StringComparison.Ordinal)) + "/office";

    /// <summary>Waits until the command is cancelled (Ctrl-C) or the host is stopped (SIGTERM).</summary>
    public static async Task WaitAsync(IHost app, CancellationToken ct)
    {
        var lifetime = (IHostApplicationLifetime)app.Services.GetService(typeof(IHostApplicationLifetime))!;
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, lifetime.ApplicationStopping);
        await Task.Delay(Timeout.InfiniteTimeSpan, either.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    private static async Task PrepareAsync(string database, bool applySchema, CancellationToken ct)
    {
        await using var source = NpgsqlDataSource.Create(database);
        if (applySchema)
        {
            await SchemaSteps.ApplyAsync(source, ct);
            await Ticks.TickSetup.ProvisionAsync(database, ct);
        }
        else if (await SchemaSteps.DifferenceAsync(source, ct) is not null)
            throw new SettingsException("The database does not have this version's schema: run \"fleetwake schema\" once (or start with --apply-schema).");
    }
}
