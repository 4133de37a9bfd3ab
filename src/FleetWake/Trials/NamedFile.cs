using FleetWake.Commands;

namespace FleetWake.Trials;

/// <summary>A file that was named at the command line. What goes wrong with it is one line that says which option named it.</summary>
internal static class NamedFile
{
    /// <summary>What stands for the standard input.</summary>
    public const string StandardInput = "-";

    private const string Reading = "read";

    /// <summary>Refuses a name that is empty.</summary>
    /// <param name="option">What named it.</param>
    /// <param name="path">The name; null when the option was not given.</param>
    public static void Named(string option, string? path)
    {
        if (path is not null && string.IsNullOrWhiteSpace(path)) throw new CommandException($"{option} \"{path}\" is no file: write the name of one.");
    }

    /// <summary>Reads a file, or the standard input.</summary>
    /// <exception cref="CommandException">It cannot be read; names the option and says why.</exception>
    public static T Read<T>(string option, string path, Func<TextReader, T> read)
    {
        Named(option, path);
        if (path == StandardInput) return read(Console.In);
        return Told(option, path, Reading, () =>
        {
            using var text = new StreamReader(path);
            return read(text);
        });
    }

    /// <summary>Writes a file.</summary>
    /// <exception cref="CommandException">It cannot be written; names the option and says why.</exception>
    public static void Write(string option, string path, byte[] bytes)
    {
        Named(option, path);
        _ = Told(option, path, "written", () =>
        {
            File.WriteAllBytes(path, bytes);
            return true;
        });
    }

    private static T Told<T>(string option, string path, string what, Func<T> act)
    {
        if (Directory.Exists(path)) throw new CommandException($"{option}: \"{path}\" is a folder: name a file.");
        try
        {
            return act();
        }
        catch (FileNotFoundException)
        {
            throw new CommandException(what == Reading ? $"{option}: there is no file \"{path}\"." : $"{option}: \"{path}\" cannot be {what} there.");
        }
        catch (DirectoryNotFoundException)
        {
            throw new CommandException($"{option}: \"{path}\" is in a folder that does not exist.");
        }
        catch (UnauthorizedAccessException)
        {
            throw new CommandException($"{option}: \"{path}\" may not be {what} by this user.");
        }
        catch (IOException e)
        {
            throw new CommandException($"{option}: \"{path}\" cannot be {what}: {e.Message.Split('\n')[0].TrimEnd('\r')}");
        }
    }
}
