using System.Diagnostics;
using System.Text;

namespace FleetWake.Faults.Tests;

/// <summary>The program as a process of its own, as a person starts it.</summary>
internal sealed class FleetProgram : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(4);
    private readonly StringBuilder output = new();
    private readonly StringBuilder standardOutput = new();
    private readonly Process process;

    public FleetProgram(string? database, params string[] arguments)
        : this(database, [], arguments)
    {
    }

    public FleetProgram(string? database, IReadOnlyList<(string Name, string Value)> environment, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "fleetwake.dll"));
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        start.Environment.Remove("FLEETWAKE_DB");
        if (database is not null) start.Environment["FLEETWAKE_DB"] = database;

        // Several workers run on this machine at once: each finds a port for itself.
        start.Environment["FLEETWAKE_HEALTH_URLS"] = "http://127.0.0.1:0";
        foreach (var (name, value) in environment) start.Environment[name] = value;
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, line) => Keep(line.Data, standardOutput);
        process.ErrorDataReceived += (_, line) => Keep(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public int Id => process.Id;

    public bool HasEnded => process.HasExited;

    /// <summary>What it said, errors too.</summary>
    public string Output => Said(output);

    /// <summary>What a script would keep of it.</summary>
    public string StandardOutput => Said(standardOutput);

    public static async Task<(int Exit, string Output)> RunAsync(string? database, CancellationToken ct, params string[] arguments)
    {
        using var program = new FleetProgram(database, arguments);
        return (await program.EndAsync(ct), program.Output);
    }

    /// <summary>Waits for its end and returns its exit code.</summary>
    public async Task<int> EndAsync(CancellationToken ct)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(ct);
        patience.CancelAfter(Patience);
        await process.WaitForExitAsync(patience.Token);
        process.WaitForExit();
        return process.ExitCode;
    }

    public async Task SaysAsync(string text, CancellationToken ct)
    {
        var clock = Stopwatch.StartNew();
        while (!Output.Contains(text, StringComparison.Ordinal))
        {
            Assert.False(process.HasExited, $"it ended without saying \"{text}\":\n{Output}");
            Assert.True(clock.Elapsed < Patience, $"it did not say \"{text}\":\n{Output}");
            await Task.Delay(50, ct);
        }
    }

    /// <summary>Sends a signal by name, as a terminal or a service manager does.</summary>
    public void Signal(string name) => Process.Start("kill", [$"-{name}", $"{process.Id}"])!.WaitForExit();

    public void Dispose()
    {
        if (!process.HasExited) process.Kill(entireProcessTree: true);
        process.Dispose();
    }

    private string Said(StringBuilder text)
    {
        lock (output) return text.ToString();
    }

    private void Keep(string? line, StringBuilder? alone = null)
    {
        if (line is null) return;
        lock (output)
        {
            output.AppendLine(line);
            alone?.AppendLine(line);
        }
    }
}
