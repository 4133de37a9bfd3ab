using System.Diagnostics;

namespace FleetWake.Store.Servers;

/// <summary>
/// Wraps a PostgreSQL program so that it runs as an allowed user, dies with us, and is not hit by our Ctrl-C.
/// Each wrapper execs the next, so the process that is started is the server itself and keeps its pid.
/// </summary>
internal sealed class ServerLauncher
{
    private static readonly string[] ToolFolders = ["/usr/bin", "/bin", "/usr/sbin", "/sbin"];

    private readonly List<string> _wrapper = [];

    public ServerLauncher(ServerAccount? account)
    {
        Account = account;
        // A terminal sends Ctrl-C to its whole process group. In a process group of its own the server outlives it until
        // we have closed what stands on it. setsid forks only for a group leader, which a child of ours is not.
        if (Tool("setsid") is { } setsid)
            _wrapper.Add(setsid);

        string? setpriv = Tool("setpriv");
        if (account is not null && setpriv is null)
            throw new InvalidOperationException("postgres does not run as root, and setpriv (package util-linux) is missing, so no other user can run it.");
        if (setpriv is null || !OperatingSystem.IsLinux())
            return;
        string abilities = Output(setpriv, "--help");
        // The user changes before the death signal is set: the kernel clears it when credentials change.
        string[] options =
        [
            .. account is null ? [] : new[] { $"--reuid={account.Uid}", $"--regid={account.Gid}", "--clear-groups" },
            .. abilities.Contains("--no-new-privs") ? ["--no-new-privs"] : Array.Empty<string>(),
            .. abilities.Contains("--pdeathsig") ? ["--pdeathsig=INT"] : Array.Empty<string>(),
        ];
        if (options.Length > 0)
            _wrapper.AddRange([setpriv, .. options, "--"]);
    }

    public ServerAccount? Account { get; }

    public ProcessStartInfo Prepare(string program, string folder, IEnumerable<string> arguments)
    {
        string[] line = [.. _wrapper, program, .. arguments];
        var start = new ProcessStartInfo(line[0], line[1..])
        {
            WorkingDirectory = folder, // ours may be closed to the server's user
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (OperatingSystem.IsWindows())
        {
            start.CreateNewProcessGroup = true; // Ctrl-C, as above
            return start; // and Windows programs do not start without their environment
        }
        // PGPORT, PGDATA, LD_PRELOAD, a locale that is not installed: nothing of ours may steer the server.
        start.Environment.Clear();
        start.Environment["PATH"] = "/usr/local/bin:/usr/bin:/bin";
        start.Environment["LC_ALL"] = "C"; // its messages are read for "ready" and for "Address already in use"
        start.Environment["TZ"] = "UTC";
        return start;
    }

    private static string? Tool(string name) =>
        ToolFolders.Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);

    private static string Output(string program, string argument)
    {
        using Process asked = Process.Start(new ProcessStartInfo(program, argument) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        return asked.StandardOutput.ReadToEnd();
    }
}
