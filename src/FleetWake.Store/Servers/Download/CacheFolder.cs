namespace FleetWake.Store.Servers.Download;

/// <summary>Where downloads are kept: the user's own cache folder, so that nobody else can put programs there for us to run.</summary>
internal static class CacheFolder
{
    private const string Ours = "fleetwake";

    /// <summary>Root's own folder is closed to the user who runs postgres for it; the system's is open to read, and root's to write.</summary>
    public static string? Of(ServerAccount? account)
    {
        string parent = OfUser();
        if (account is null || (Directory.Exists(parent) && Modes.LetsOthersThrough(parent)))
            return Path.Combine(parent, Ours);
        const string system = "/var/cache";
        return Directory.Exists(system) && Modes.LetsOthersThrough(system) ? Path.Combine(system, Ours) : null;
    }

    private static string OfUser()
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        return OperatingSystem.IsWindows() ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : OperatingSystem.IsMacOS() ? Path.Combine(home, "Library", "Caches")
            : Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { Length: > 0 } named && Path.IsPathRooted(named) ? named
            : Path.Combine(home, ".cache");
    }
}
