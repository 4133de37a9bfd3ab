namespace FleetWake.Store.Servers;

/// <summary>One program at a time does what only one should: the others wait for the file.</summary>
internal static class Turn
{
    /// <exception cref="IOException">The file cannot be written to, as on a read-only file system: no wait would help.</exception>
    public static async Task<FileStream> TakeAsync(string file, TimeProvider time, CancellationToken ct)
    {
        while (true)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException held) when (IsHeld(held))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(200), time, ct);
            }
        }
    }

    // EWOULDBLOCK of Linux and macOS, ERROR_SHARING_VIOLATION of Windows; the framework has no name for them.
    private static bool IsHeld(IOException e) =>
        OperatingSystem.IsWindows() ? (e.HResult & 0xFFFF) == 32 : e.HResult == (OperatingSystem.IsMacOS() ? 35 : 11);
}
