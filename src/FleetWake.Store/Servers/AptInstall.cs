using System.Diagnostics;

namespace FleetWake.Store.Servers;

/// <summary>Installs Debian's package when this process is root on Debian or Ubuntu, so that a bare machine just works.</summary>
internal static class AptInstall
{
    // /run is writable by root alone, so nobody can have placed a link here.
    private const string LockFile = "/run/fleetwake-install.lock";
    private const string ClusterSettings = "/etc/postgresql-common/createcluster.d";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    public static bool Allowed(Machine machine) =>
        machine.IsRoot
        && machine.System.Any(word => word is "debian" or "ubuntu")
        && machine.Variable("FLEETWAKE_INSTALL") != "never";

    /// <summary>Returns what was installed, or what another process installed while this one waited for its turn.</summary>
    public static async Task<ServerBinaries?> RunAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        using var patience = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(ct, patience.Token);
        try
        {
            return await RunInTurnAsync(machine, say, time, either.Token);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            throw new TimeoutException($"apt-get did not install PostgreSQL within {Patience.TotalMinutes} minutes.");
        }
    }

    private static async Task<ServerBinaries?> RunInTurnAsync(Machine machine, Action<string> say, TimeProvider time, CancellationToken ct)
    {
        using FileStream turn = await Turn.TakeAsync(LockFile, time, ct);
        if (ServerBinaries.Find(machine) is { } already)
            return already;

        say("PostgreSQL is not installed: installing the package postgresql with apt-get (FLEETWAKE_INSTALL=never forbids it).");
        await AptGetAsync(["update"], ct);
        await InstallWithoutClusterAsync(ct);
        return ServerBinaries.Find(machine);
    }

    /// <summary>
    /// The package would make and start a cluster named main on port 5432; a setting beside its own stops that. It has
    /// to lie there before the package is configured, and is taken away again: the machine's later choices are not ours.
    /// </summary>
    private static async Task InstallWithoutClusterAsync(CancellationToken ct)
    {
        Directory.CreateDirectory(ClusterSettings);
        string setting = Path.Combine(ClusterSettings, "fleetwake.conf");
        await File.WriteAllTextAsync(setting, "create_main_cluster = false\n", ct);
        try
        {
            await AptGetAsync(["install", "-y", "--no-install-recommends", "postgresql"], ct);
        }
        finally
        {
            File.Delete(setting);
        }
    }

    private static async Task AptGetAsync(string[] arguments, CancellationToken ct)
    {
        var start = new ProcessStartInfo("apt-get", [.. arguments, "-q", "-o", "DPkg::Lock::Timeout=300", "-o", "Acquire::Retries=3"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["DEBIAN_FRONTEND"] = "noninteractive", ["LC_ALL"] = "C" },
        };
        var tail = new LogTail();
        using Process apt = Process.Start(start)!;
        apt.StandardInput.Close(); // nobody is there to answer a question
        await Task.WhenAll(tail.DrainAsync(apt.StandardOutput, ct), tail.DrainAsync(apt.StandardError, ct), apt.WaitForExitAsync(ct));
        if (apt.ExitCode != 0)
            throw new InvalidOperationException($"apt-get {string.Join(' ', arguments)} ended with {apt.ExitCode}:\n{tail}");
    }
}
