using System.ComponentModel;
using System.Runtime.InteropServices;

namespace FleetWake.Store.Servers;

/// <summary>The two calls that .NET does not offer: a signal other than KILL, and another owner for a file.</summary>
internal static class Libc
{
    public const int Interrupt = 2;
    public const int Kill = 9;

    /// <summary>A process that is gone needs no signal, so the answer is not looked at.</summary>
    public static void Signal(int pid, int signal) => _ = kill(pid, signal);

    public static void GiveTo(string path, ServerAccount account)
    {
        if (chown(path, account.Uid, account.Gid) != 0)
            throw new Win32Exception(Marshal.GetLastPInvokeError(), $"{path} could not be given to user {account.Uid}");
    }

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int kill(int pid, int signal);

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int chown([MarshalAs(UnmanagedType.LPUTF8Str)] string path, uint uid, uint gid);
}
