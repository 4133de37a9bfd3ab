using System.Diagnostics;

namespace FleetWake.Store.Servers;

/// <summary>Clears away what programs left that had no time to: killed ones, and those before a power cut.</summary>
internal static class StaleFolders
{
    // Between making its folder and signing it a program has signed nothing yet; that takes milliseconds.
    private static readonly TimeSpan UnsignedAge = TimeSpan.FromMinutes(10);

    public static async Task CleanAsync(ServerAccount? account, Action<string> say, TimeProvider time)
    {
        foreach (string folder in ServerFolder.Parents(account)
            .SelectMany(parent => Directory.EnumerateDirectories(parent, ServerFolder.Prefix + "*"))
            .Where(IsOurs))
        {
            try
            {
                await CleanOneAsync(folder, say, time);
            }
            catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
            {
                say($"The folder {folder} of an ended program could not be removed: {failed.Message}");
            }
        }
    }

    private static async Task CleanOneAsync(string folder, Action<string> say, TimeProvider time)
    {
        if (!File.Exists(OwnerFile.In(folder)) && time.GetUtcNow() - Directory.GetLastWriteTimeUtc(folder) < UnsignedAge)
            return;
        using OwnerFile? owner = OwnerFile.TryTake(folder);
        if (owner is null || !await OrphanServer.EndAsync(Path.Combine(folder, "data"), time))
            return;
        await Removal.DeleteAsync(folder);
        say($"Removed {folder}, left by a program that has ended.");
    }

    /// <summary>
    /// Root could open everybody's; a folder that another user prepared under this name must not make root delete or
    /// signal anything. Other users are stopped by the folder's mode.
    /// </summary>
    private static bool IsOurs(string folder)
    {
        if (!OperatingSystem.IsLinux() || !Environment.IsPrivilegedProcess)
            return true;
        using Process asked = Process.Start(new ProcessStartInfo("stat", ["-c", "%u %F", folder]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        return asked.StandardOutput.ReadToEnd().Trim() == "0 directory";
    }
}
