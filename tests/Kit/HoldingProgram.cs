using System.Diagnostics;
using System.Runtime.InteropServices;

namespace FleetWake.Tests.Kit;

/// <summary>This kit started as a program of its own that holds a server (see Program.cs), to be killed or interrupted.</summary>
public sealed class HoldingProgram : IDisposable
{
    private readonly Process _process;

    private HoldingProgram(Process process) => _process = process;

    public int ServerProcessId { get; private set; }

    public string Folder { get; private set; } = "";

    public static async Task<HoldingProgram> StartAsync(CancellationToken ct)
    {
        // A process group of its own, as a terminal gives: the whole group can be signalled without hitting the tests.
        string kit = typeof(HoldingProgram).Assembly.Location;
        var program = new HoldingProgram(Process.Start(new ProcessStartInfo("setsid", [Dotnet, "exec", kit])
        {
            RedirectStandardOutput = true,
        })!);
        string[] said = (await program.NextLineAsync(ct))?.Split(' ') ?? throw new InvalidOperationException("The program ended before it held a server.");
        (program.ServerProcessId, program.Folder) = (int.Parse(said[1]), said[2]);
        return program;
    }

    public async Task<string?> NextLineAsync(CancellationToken ct) => await _process.StandardOutput.ReadLineAsync(ct);

    /// <summary>As kill -9: it has no time to do anything.</summary>
    public async Task KillAsync(CancellationToken ct)
    {
        _process.Kill();
        await _process.WaitForExitAsync(ct);
    }

    /// <summary>As Ctrl-C in a terminal: every process of the group is hit at once.</summary>
    public async Task InterruptGroupAsync(CancellationToken ct) => await SignalAsync("INT", -_process.Id, ct);

    public async Task<int> EndAsync(CancellationToken ct)
    {
        await _process.WaitForExitAsync(ct);
        return _process.ExitCode;
    }

    /// <summary>Stops a process where it stands, so that no signal but KILL moves it.</summary>
    public static Task FreezeAsync(int pid, CancellationToken ct) => SignalAsync("STOP", pid, ct);

    public void Dispose()
    {
        if (!_process.HasExited)
            _process.Kill();
        _process.Dispose();
    }

    private static async Task SignalAsync(string signal, int pid, CancellationToken ct)
    {
        // "-s": Debian's sh reads no "--" after the short form.
        using Process kill = Process.Start("sh", ["-c", $"kill -s {signal} -- {pid}"])!;
        await kill.WaitForExitAsync(ct);
        if (kill.ExitCode != 0)
            throw new InvalidOperationException($"Signal {signal} did not reach {pid}.");
    }

    // Not from PATH: the runtime that runs this is the one that can run the kit.
    private static string Dotnet => Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "dotnet"));
}
