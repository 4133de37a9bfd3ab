namespace FleetWake.Store.Servers;

/// <summary>Who may enter a folder and read a file. Windows keeps a user's folders apart by itself.</summary>
internal static class Modes
{
    private const UnixFileMode Mine = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    public const UnixFileMode Passable = Mine | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    public static string MakePrivate(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, Mine);
        return folder;
    }

    /// <summary>What others may read and run, whatever this process's own mask is: the server's user is another than root.</summary>
    public static void MakeOpen(string folder)
    {
        Directory.CreateDirectory(folder);
        Open(folder, programs: true);
    }

    public static void Open(string path, bool programs)
    {
        const UnixFileMode read = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead;
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(path, programs ? read | Passable : read);
    }

    /// <summary>Made closed, not closed after it was made: between the two somebody could open it.</summary>
    public static void WritePrivate(string file, string text)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var writer = new StreamWriter(file, options);
        writer.Write(text);
    }

    public static bool LetsOthersThrough(string folder)
    {
        if (OperatingSystem.IsWindows())
            return true;
        for (DirectoryInfo? at = new(folder); at is not null; at = at.Parent)
        {
            if (!at.UnixFileMode.HasFlag(UnixFileMode.OtherExecute))
                return false;
        }
        return true;
    }
}
