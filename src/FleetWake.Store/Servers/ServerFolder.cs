namespace FleetWake.Store.Servers;

/// <summary>Where one private cluster lives: data, the password to it, and whose it is.</summary>
internal sealed class ServerFolder : IAsyncDisposable
{
    public const string Prefix = "fleetwake-pg-";

    private readonly OwnerFile _owner;
    private readonly bool _kept;

    private ServerFolder(string path, OwnerFile owner, bool kept)
    {
        (Path, _owner, _kept) = (path, owner, kept);
    }

    public string Path { get; }

    public string Data => System.IO.Path.Combine(Path, "data");

    /// <summary>Read by initdb and by a later start; by nobody else on this machine.</summary>
    public string PasswordFile => System.IO.Path.Combine(Path, "password");

    public static ServerFolder Take(string? wanted, ServerAccount? account)
    {
        string path = wanted is null ? MakeTemporary(account) : MakeNamed(System.IO.Path.GetFullPath(wanted));
        // The server's user has to pass through to its data, but the owner file stays ours.
        if (account is not null && OperatingSystem.IsLinux())
            File.SetUnixFileMode(path, Modes.Passable);
        if (account is not null && !Modes.LetsOthersThrough(path))
            throw new InvalidOperationException($"{path} lies in a folder that is closed to the user who runs postgres; choose another data folder.");
        OwnerFile owner = OwnerFile.TryTake(path)
            ?? throw new InvalidOperationException($"{path} is in use by another program; choose another data folder.");
        return new ServerFolder(path, owner, wanted is not null);
    }

    /// <summary>The system's temporary folder, unless the server's user cannot get there (that of root may be closed to all others).</summary>
    public static IEnumerable<string> Parents(ServerAccount? account) =>
        new[] { System.IO.Path.GetTempPath(), "/var/tmp" }
            .Where(Directory.Exists)
            .Where(parent => account is null || Modes.LetsOthersThrough(parent))
            .Select(parent => System.IO.Path.TrimEndingDirectorySeparator(parent))
            .Distinct();

    private static string MakeTemporary(ServerAccount? account)
    {
        string parent = Parents(account).FirstOrDefault()
            ?? throw new InvalidOperationException("No temporary folder is open to the user who runs postgres.");
        while (true)
        {
            string path = System.IO.Path.Combine(parent, Prefix + Secret.Text(8));
            if (!Directory.Exists(path))
                return Modes.MakePrivate(path);
        }
    }

    /// <summary>Only an empty folder or one of ours: a wrong path must not put a cluster among somebody's files.</summary>
    private static string MakeNamed(string path)
    {
        if (!Directory.Exists(path))
            return Modes.MakePrivate(path);
        if (Directory.EnumerateFileSystemEntries(path).Any() && !File.Exists(OwnerFile.In(path)))
            throw new InvalidOperationException($"{path} holds other files; name an empty or a new data folder.");
        return path;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_kept)
            await Removal.DeleteAsync(Data); // before the owner goes: what is left of a failed removal is cleaned later
        _owner.Dispose();
        if (!_kept)
            await Removal.DeleteAsync(Path);
    }
}
