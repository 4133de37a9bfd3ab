namespace FleetWake.Store.Servers;

/// <summary>A folder with postgres and initdb in it.</summary>
/// <param name="Package">The npm package that they were downloaded in; null for installed ones.</param>
public sealed record ServerBinaries(string Folder, Version Version, string? Package = null)
{
    public const int OldestMajor = 15;

    public string Program(string name) => ServerVersion.Program(Folder, name);

    /// <summary>
    /// The installed PostgreSQL that this machine offers, or null. A folder named by FLEETWAKE_PG_BIN is taken or
    /// refused, never passed over: whoever set it must not run on another server unawares.
    /// </summary>
    public static ServerBinaries? Find(Machine machine)
    {
        if (machine.Variable("FLEETWAKE_PG_BIN") is { } named)
        {
            return Look(machine, named) ?? throw new ServerNotFoundException(
                $"FLEETWAKE_PG_BIN names {named}, which holds no PostgreSQL {OldestMajor} or newer (postgres and initdb).");
        }
        return PackageFolders(machine)
                .Select(folder => Look(machine, folder)).OfType<ServerBinaries>()
                .MaxBy(found => found.Version)
            ?? PathFolders(machine)
                .Select(folder => Look(machine, folder)).OfType<ServerBinaries>()
                .FirstOrDefault();
    }

    private static ServerBinaries? Look(Machine machine, string folder) =>
        machine.VersionIn(folder) is { } version && version.Major >= OldestMajor ? new(folder, version) : null;

    private static IEnumerable<string> PackageFolders(Machine machine)
    {
        string? programFiles = machine.Variable("ProgramFiles");
        string[] parents =
        [
            "/usr/lib/postgresql", // Debian, Ubuntu
            "/usr/libexec", // Alpine: postgresql17 holds the programs themselves
            "/usr", // the PostgreSQL project's own packages for Fedora and Red Hat: pgsql-17/bin
            "/opt/homebrew/opt", "/usr/local/opt", "/home/linuxbrew/.linuxbrew/opt",
            .. programFiles is null ? Array.Empty<string>() : [Path.Combine(programFiles, "PostgreSQL")],
        ];
        return parents
            .SelectMany(parent => machine.Subfolders(parent))
            .Where(LooksLikePostgres)
            .SelectMany(folder => new[] { Path.Combine(folder, "bin"), folder });
    }

    private static bool LooksLikePostgres(string folder)
    {
        string name = Path.GetFileName(folder);
        return name.StartsWith("postgresql", StringComparison.Ordinal)
            || name.StartsWith("pgsql", StringComparison.Ordinal)
            || char.IsAsciiDigit(name[0]);
    }

    private static string[] PathFolders(Machine machine) =>
        (machine.Variable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
}
