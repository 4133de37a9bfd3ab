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
        foreach (var candidate in Python.Candidates(interpreter))
        {
            if (Python.Start(candidate, "scipy_balance.py") is not { } python)
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

    internal sealed record Timed(double Seconds, double Total);
}
