namespace FleetWake.Store.Servers;

/// <summary>
/// From where the server programs come: installed ones, else an installation where that needs nobody's consent. Further
/// sources (downloaded programs, containers) belong between the two.
/// </summary>
public static class ServerSearch
{
    public static async Task<ServerBinaries> FindOrInstallAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        if (ServerBinaries.Find(machine) is { } installed)
            return installed;
        ServerBinaries? fresh = AptInstall.Allowed(machine) ? await AptInstall.RunAsync(machine, say, time, ct) : null;
        return fresh ?? throw InstallCommand.Missing(machine);
    }
}
