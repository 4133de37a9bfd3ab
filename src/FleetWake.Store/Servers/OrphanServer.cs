using System.Globalization;

namespace FleetWake.Store.Servers;

/// <summary>A postgres that outlived the program that started it.</summary>
internal static class OrphanServer
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Ends whatever still runs on a data folder of ours. False when that cannot be known, so the folder must stay.</summary>
    public static async Task<bool> EndAsync(string data, TimeProvider time)
    {
        string pidFile = Path.Combine(data, "postmaster.pid");
        if (!File.Exists(Path.Combine(data, "PG_VERSION")))
            return true;
        // Without /proc a number alone proves nothing: it may be another program's by now.
        if (!OperatingSystem.IsLinux())
            return PidIn(pidFile) is not { } pid || ProcessStamp.Of(pid) is null;

        if (PidIn(pidFile) is { } postmaster && On(data).Contains(postmaster))
            Libc.Signal(postmaster, Libc.Interrupt);
        long begun = time.GetTimestamp();
        while (On(data) is { Count: > 0 } living)
        {
            if (time.GetElapsedTime(begun) > Patience)
                living.ForEach(pid => Libc.Signal(pid, Libc.Kill));
            await Task.Delay(TimeSpan.FromMilliseconds(50));
        }
        // A zombie keeps its number, and postgres would take that for a living server.
        File.Delete(pidFile);
        return true;
    }

    /// <summary>The servers and their children that work in this folder, by what they are, never by what they are called.</summary>
    internal static List<int> On(string data)
    {
        string real = RealPath(data);
        return [.. Directory.EnumerateDirectories("/proc")
            .Select(folder => int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out int pid) ? pid : 0)
            .Where(pid => pid > 0 && Link(pid, "cwd") == real && IsPostgres(Link(pid, "exe")))];
    }

    // An upgrade of the package leaves a running server with the mark " (deleted)" behind its program's path.
    private static bool IsPostgres(string? program) =>
        Path.GetFileName(program?.Replace(" (deleted)", "", StringComparison.Ordinal)) == "postgres";

    private static string? Link(int pid, string what)
    {
        try
        {
            // A zombie, a kernel thread and another user's process have no link that we can read.
            return File.ResolveLinkTarget($"/proc/{pid}/{what}", returnFinalTarget: false)?.FullName;
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>The kernel's own name for the folder, since /proc shows no symbolic links on the way to it.</summary>
    private static string RealPath(string data)
    {
        using var opened = File.OpenHandle(Path.Combine(data, "PG_VERSION"));
        return Path.GetDirectoryName(Link(Environment.ProcessId, $"fd/{opened.DangerousGetHandle()}"))!;
    }

    private static int? PidIn(string pidFile) =>
        File.Exists(pidFile) && int.TryParse(File.ReadLines(pidFile).FirstOrDefault(), out int pid) ? pid : null;
}
