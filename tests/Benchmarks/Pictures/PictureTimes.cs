using System.Diagnostics;
using System.Text.Json;
using FleetWake.Reports.Pictures;

namespace FleetWake.Benchmarks.Pictures;

/// <summary>
/// One drift chart by the program and the same by matplotlib, in turns within one run, so that whatever else the machine does meets both. Each
/// side counts its own processor time for drawing and packing; starting Python is not counted.
/// </summary>
internal static class PictureTimes
{
    private const int Rounds = 9, Charts = 20;

    internal static async Task<int> RunAsync(string? interpreter, TextWriter output)
    {
        var renderer = new PngRenderer();
        Ours(renderer, Charts);
        using var python = await StartAsync(interpreter);
        var (times, ratios) = (new List<double>(), new List<double>());
        for (var round = 1; round <= Rounds; round++)
        {
            var (ours, bytes) = Ours(renderer, Charts);
            times.Add(ours);
            if (python is null) continue;
            if (await DrawAsync(python, Charts) is not { } theirs) return 1;
            var each = theirs.Seconds / Charts;
            ratios.Add(each / ours);
            await output.WriteLineAsync($"chart {round}: matplotlib {theirs.Version} {each * 1e3:0.0} ms, {theirs.Size} bytes; FleetWake {ours * 1e3:0.0} ms, {bytes} bytes; ratio {ratios[^1]:0.0}");
        }

        times.Sort();
        await output.WriteLineAsync($"a drift chart, 1200 x 732: {times[Rounds / 2] * 1e3:0.0} ms (median of {Rounds}; {times[0] * 1e3:0.0} to {times[^1] * 1e3:0.0})");
        if (python is null)
        {
            await output.WriteLineAsync("pictures: no python3 with matplotlib was found (Debian: apt install python3-matplotlib); nothing was compared.");
            return 1;
        }

        ratios.Sort();
        await output.WriteLineAsync($"ratio {ratios[Rounds / 2]:0.0} (median of {Rounds}; {ratios[0]:0.0} to {ratios[^1]:0.0})");
        python.Kill();
        return 0;
    }

    private static (double SecondsEach, int Bytes) Ours(PngRenderer renderer, int count)
    {
        var (start, bytes) = (Used(), 0);
        for (var i = 0; i < count; i++) bytes = renderer.Render(InventedPictures.Drift).Length;
        return ((Used() - start).TotalSeconds / count, bytes);
    }

    /// <summary>Processor time of this process: whatever waits for a core beside it is not counted, on either side.</summary>
    private static TimeSpan Used()
    {
        using var own = Process.GetCurrentProcess();
        return own.TotalProcessorTime;
    }

    private static async Task<Process?> StartAsync(string? interpreter)
    {
        foreach (var candidate in Python.Candidates(interpreter))
        {
            if (Python.Start(candidate, "matplotlib_drift.py") is not { } python) continue;
            try
            {
                await python.StandardInput.WriteLineAsync(InventedPictures.Json(InventedPictures.Drift));
                if (await DrawAsync(python, 2) is not null) return python; // the first finds the fonts
            }
            catch (IOException)
            {
                // It ended at its first import.
            }

            python.Dispose();
        }

        return null;
    }

    private static async Task<Timed?> DrawAsync(Process python, int count)
    {
        await python.StandardInput.WriteLineAsync($"{count}");
        await python.StandardInput.FlushAsync();
        return await python.StandardOutput.ReadLineAsync() is { } line ? JsonSerializer.Deserialize<Timed>(line, JsonSerializerOptions.Web) : null;
    }

    private sealed record Timed(double Seconds, int Size, string Version);
}
