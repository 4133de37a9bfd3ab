using System.Diagnostics;

namespace FleetWake.Store.Servers;

/// <summary>One run of a PostgreSQL program, from its start to its end.</summary>
internal sealed class ServerProcess
{
    private readonly TaskCompletionSource<int> _pid = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _ready = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource<int> _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private ServerProcess()
    {
    }

    public LogTail Log { get; } = new();

    public int Id { get; private set; }

    /// <summary>Completes with the exit code.</summary>
    public Task<int> Ended => _ended.Task;

    /// <summary>Completes when the server says that it takes connections.</summary>
    public Task Ready => _ready.Task;

    public static async Task<ServerProcess> StartAsync(ProcessStartInfo start)
    {
        var run = new ServerProcess();
        run.Log.Read += line =>
        {
            if (line.Contains("ready to accept connections", StringComparison.Ordinal))
                run._ready.TrySetResult();
        };
        // The death signal fires when the thread that started the child ends, not the process. A thread of the pool
        // may end at any time, so the server gets one that lives as long as itself.
        new Thread(() => run.Live(start)) { IsBackground = true, Name = "PostgreSQL" }.Start();
        run.Id = await run._pid.Task;
        return run;
    }

    private void Live(ProcessStartInfo start)
    {
        try
        {
            using Process process = Process.Start(start)!;
            process.StandardInput.Close();
            Task drained = Task.WhenAll(
                Log.DrainAsync(process.StandardOutput, CancellationToken.None),
                Log.DrainAsync(process.StandardError, CancellationToken.None));
            _pid.SetResult(process.Id);
            process.WaitForExit();
            int code = process.ExitCode;
            // Its children hold the same pipes: when these are at their end, the children are gone too.
            drained.Wait(TimeSpan.FromSeconds(10));
            _ended.TrySetResult(code);
        }
        catch (Exception broken) when (!_pid.Task.IsCompleted)
        {
            _pid.SetException(broken);
        }
        catch (Exception broken)
        {
            _ended.TrySetException(broken);
        }
    }

    /// <summary>Asks, waits, and only then kills: a killed server has to recover at its next start.</summary>
    public async Task StopAsync(Action ask, TimeSpan patience, TimeProvider time)
    {
        if (Ended.IsCompleted)
            return;
        ask();
        try
        {
            await Ended.WaitAsync(patience, time);
        }
        catch (TimeoutException)
        {
            Kill();
            await Ended;
        }
    }

    private void Kill()
    {
        try
        {
            using Process process = Process.GetProcessById(Id);
            process.Kill(entireProcessTree: true);
        }
        catch (ArgumentException)
        {
            // It ended in the meantime, which is what was wanted.
        }
    }
}
