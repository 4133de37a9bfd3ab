using System.Diagnostics;
using System.Text.RegularExpressions;

namespace FleetWake.Store.Servers;

internal static partial class ServerVersion
{
    private static readonly string Suffix = OperatingSystem.IsWindows() ? ".exe" : "";

    public static string Program(string folder, string name) => Path.Combine(folder, name + Suffix);

    /// <summary>Asks the server itself: on Debian /usr/bin holds client wrappers only, and a folder's name may lie.</summary>
    public static Version? In(string folder)
    {
        if (!File.Exists(Program(folder, "postgres")) || !File.Exists(Program(folder, "initdb")))
            return null;
        try
        {
            using var asked = Process.Start(new ProcessStartInfo(Program(folder, "postgres"), "--version")
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            return Parse(asked.StandardOutput.ReadToEnd());
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null; // not for this machine, or not executable
        }
    }

    /// <summary>Reads "postgres (PostgreSQL) 15.18 (Debian ...)", and "17beta2" as 17.0.</summary>
    internal static Version? Parse(string answer) =>
        VersionPattern().Match(answer) is { Success: true } found
            ? new Version(int.Parse(found.Groups[1].Value), found.Groups[2].Success ? int.Parse(found.Groups[2].Value) : 0)
            : null;

    [GeneratedRegex(@"(\d+)(?:\.(\d+))?")]
    private static partial Regex VersionPattern();
}
