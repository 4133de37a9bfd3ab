namespace FleetWake.Store.Servers;

/// <summary>
/// Says whose a server folder is: number and start time of the process, for people and for file systems without
/// locks, and a lock held while it lives, which also counts where process numbers do not (containers with a shared
/// temporary folder).
/// </summary>
internal sealed class OwnerFile : IDisposable
{
    private readonly FileStream _held;

    private OwnerFile(FileStream held) => _held = held;

    public static string In(string folder) => Path.Combine(folder, "owner");

    /// <summary>Takes the folder for this process; null when its owner lives.</summary>
    public static OwnerFile? TryTake(string folder)
    {
        FileStream held;
        try
        {
            held = new FileStream(In(folder), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception closed) when (closed is IOException or UnauthorizedAccessException)
        {
            return null;
        }
        using var reader = new StreamReader(held, leaveOpen: true);
        string written = reader.ReadToEnd();
        if (int.TryParse(written.Split(' ')[0], out int pid) && ProcessStamp.Of(pid) == written && pid != Environment.ProcessId)
        {
            held.Dispose();
            return null;
        }
        held.SetLength(0);
        held.Write(System.Text.Encoding.ASCII.GetBytes(ProcessStamp.Of(Environment.ProcessId)!));
        held.Flush();
        return new OwnerFile(held);
    }

    public void Dispose() => _held.Dispose();
}
