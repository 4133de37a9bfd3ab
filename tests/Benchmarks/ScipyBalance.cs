using System.Diagnostics;
using System.Text.Json;

namespace FleetWake.Benchmarks;

/// <summary>A Python that has scipy, solving on demand.</summary>
internal sealed class ScipyBalance : IDisposable
{
    private readonly Process _python;

    private ScipyBalance(Process python) => _python = python;

    /// <summary>Tries the interpreter given, else every python3 on the PATH; null when none of them has scipy.</summary>
    internal static async Task<ScipyBalance?> StartAsync(string? interpreter)
    {
        var paths = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var candidates = interpreter is null
            ? paths.Select(path => Path.Combine(path, "python3")).Where(File.Exists).Distinct()
            : [interpreter];
        foreach (var candidate in candidates)
        {
            if (Start(candidate) is not { } python)
                continue;

            var scipy = new ScipyBalance(python);
            if (await scipy.SolveAsync("brentq", 1) is not null)
                return scipy;

            scipy.Dispose();
        }

        return null;
    }

    /// <summary>The seconds that Python itself counted for so many solves, and the sum of their rates; null when it is gone.</summary>
    internal async Task<Timed?> SolveAsync(string way, int count)
    {
        try
        {
            await _python.StandardInput.WriteLineAsync($"{way} {count}");
            await _python.StandardInput.FlushAsync();
        }
        catch (IOException)
        {
            return null; // it ended at its first import
        }

        return await _python.StandardOutput.ReadLineAsync() is { } line
            ? JsonSerializer.Deserialize<Timed>(line, JsonSerializerOptions.Web)
            : null;
    }

    public void Dispose()
    {
        if (!_python.HasExited)
            _python.Kill();
        _python.Dispose();
    }

    private static Process? Start(string interpreter)
    {
        try
        {
            return Process.Start(new ProcessStartInfo(interpreter)
            {
                ArgumentList = { Path.Combine(AppContext.BaseDirectory, "scipy_balance.py") },
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            });
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null; // no such program
        }
    }

    internal sealed record Timed(double Seconds, double Total);
}
