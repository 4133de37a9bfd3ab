using System.Security.Cryptography;

namespace FleetWake.Store.Servers.Download;

/// <summary>
/// The hash of every unpacked file, in the form of sha256sum. A cleaner of old files, a full disk or a power cut takes
/// single files away; a server that misses one fails late and strangely.
/// </summary>
internal static class Manifest
{
    private const string Name = "files.sha256";

    public static void Write(string folder)
    {
        string[] lines = [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/'))
            .Order(StringComparer.Ordinal)
            .Select(file => $"{HashOf(Path.Combine(folder, file))}  {file}")];
        File.WriteAllLines(Path.Combine(folder, Name), lines);
    }

    /// <summary>Whether all are there as they were unpacked. Reads them all, 60 MB in about a tenth of a second.</summary>
    public static bool Holds(string folder)
    {
        try
        {
            // A power cut may leave the list itself empty or cut short.
            string[] lines = File.ReadAllLines(Path.Combine(folder, Name));
            return lines.Length > 0 && lines.Select(line => line.Split("  ", 2))
                .All(pair => pair.Length == 2 && HashOf(Path.Combine(folder, pair[1])) == pair[0]);
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static string HashOf(string file)
    {
        using FileStream opened = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(opened));
    }
}
