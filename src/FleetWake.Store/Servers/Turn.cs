namespace FleetWake.Store.Servers;

/// <summary>One program at a time does what only one should: the others wait for the file.</summary>
internal static class Turn
{
    public static async Task<FileStream> TakeAsync(string file, TimeProvider time, CancellationToken ct)
    {
        while (true)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (File.Exists(file))
            {
                await Task.Delay(TimeSpan.FromMilliseconds(200), time, ct);
            }
        }
    }
}
