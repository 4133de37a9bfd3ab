using System.Diagnostics;

namespace FleetWake.Store.Servers;

/// <summary>Tells a process from a later one that was given the same number.</summary>
internal static class ProcessStamp
{
    /// <summary>Number and start time of a living process; null when there is none. A zombie lives no more.</summary>
    public static string? Of(int pid) => (OperatingSystem.IsLinux() ? FromProc(pid) : FromSystem(pid)) is { } start
        ? $"{pid} {start}"
        : null;

    /// <summary>Clock ticks since boot, as the kernel keeps them: .NET's StartTime moves when the clock is set.</summary>
    private static string? FromProc(int pid)
    {
        try
        {
            string stat = File.ReadAllText($"/proc/{pid}/stat");
            // The name in brackets may hold spaces and brackets; the fields after it are numbered from 3 in proc(5).
            string[] fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
            return fields[0] is "Z" or "X" ? null : fields[22 - 3];
        }
        catch (IOException)
        {
            return null;
        }
    }

    private static string? FromSystem(int pid)
    {
        try
        {
            using Process process = Process.GetProcessById(pid);
            return process.StartTime.ToUniversalTime().ToString("O");
        }
        catch (Exception gone) when (gone is ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }
}
