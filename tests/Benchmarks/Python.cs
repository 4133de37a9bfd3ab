using System.Diagnostics;

namespace FleetWake.Benchmarks;

/// <summary>A script beside this program, run by a Python.</summary>
internal static class Python
{
    /// <summary>The interpreter given, else every python3 on the PATH.</summary>
    internal static IEnumerable<string> Candidates(string? interpreter) => interpreter is not null
        ? [interpreter]
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(path => Path.Combine(path, "python3")).Where(File.Exists).Distinct();

    /// <summary>Starts it on one thread; null when there is no such program.</summary>
    internal static Process? Start(string interpreter, string script)
    {
        try
        {
            return Process.Start(new ProcessStartInfo(interpreter)
            {
                ArgumentList = { Path.Combine(AppContext.BaseDirectory, script) },
                Environment =
                {
                    ["OMP_NUM_THREADS"] = "1",
                    ["OPENBLAS_NUM_THREADS"] = "1",
                    ["MKL_NUM_THREADS"] = "1",
                    // glibc would give every large array back to the system and fetch it again: some seven times slower where it was tried.
                    ["MALLOC_MMAP_THRESHOLD_"] = "268435456",
                    ["MALLOC_TRIM_THRESHOLD_"] = "268435456",
                    ["MALLOC_TOP_PAD_"] = "67108864",
                },
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            });
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
