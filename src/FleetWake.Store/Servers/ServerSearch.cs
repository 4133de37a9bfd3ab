using FleetWake.Store.Servers.Download;

namespace FleetWake.Store.Servers;

/// <summary>
/// From where PostgreSQL's programs come: installed ones, else downloaded ones, else an installation where that needs
/// nobody's consent. A container is a server and not programs; <see cref="DatabaseServer"/> tries one before it installs.
/// </summary>
public static class ServerSearch
{
    public static async Task<ServerBinaries> FindOrInstallAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct) =>
        await FindAsync(machine, say, time, ct) ?? await InstallAsync(machine, say, time, ct);

    /// <summary>Programs that change nothing on this machine but a cache.</summary>
    internal static async Task<ServerBinaries?> FindAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        var choice = SourceChoice.Of(machine);
        if (choice.Allows(SourceChoice.Installed) && ServerBinaries.Find(machine) is { } installed)
            return installed;
        if (!choice.Allows(SourceChoice.Npm))
            return null;
        try
        {
            return await CachedServer.FindAsync(machine, say, time, ct);
        }
        catch (DownloadException none)
        {
            choice.PassOver(SourceChoice.Npm, none.Message, say);
            return null;
        }
    }

    internal static async Task<ServerBinaries> InstallAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        var choice = SourceChoice.Of(machine);
        if (!choice.Allows(SourceChoice.Installed))
            throw new ServerNotFoundException($"FLEETWAKE_PG_SOURCE is {choice.Only}, which gives no programs of PostgreSQL; they are needed here.");
        ServerBinaries? fresh = AptInstall.Allowed(machine) ? await AptInstall.RunAsync(machine, say, time, ct) : null;
        return fresh ?? throw InstallCommand.Missing(machine);
    }
}
