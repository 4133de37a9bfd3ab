using System.Diagnostics;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Benchmarks.Drift;

/// <summary>
/// How the fit of a fleet grows with its mountings, sizes in turns within one run, in processor time: for a machine with
/// neighbours, where what <see cref="FleetPriorBenchmarks"/> counts is mostly waiting. The clock's time stands beside it.
/// </summary>
internal static class Growth
{
    private const int Rounds = 5;
    private static readonly int[] Sizes = [250, 500, 1000, 2000];

    internal static async Task<int> RunAsync(TextWriter output)
    {
        var fleets = Array.ConvertAll(Sizes, size => InventedMountings.Draw(size));
        var (seconds, clock) = (Array.ConvertAll(Sizes, _ => new double[Rounds]), Array.ConvertAll(Sizes, _ => new double[Rounds]));
        for (var round = -1; round < Rounds; round++) // the first warms the code
        {
            for (var i = 0; i < Sizes.Length; i++)
            {
                var (start, began) = (Environment.CpuUsage.TotalTime, Stopwatch.GetTimestamp());
                FleetPrior.Fit(fleets[i], WearExpectation.Trade, DriftSettings.Recommended);
                if (round < 0) continue;
                (seconds[i][round], clock[i][round]) = ((Environment.CpuUsage.TotalTime - start).TotalSeconds, Stopwatch.GetElapsedTime(began).TotalSeconds);
            }
        }

        for (var i = 0; i < Sizes.Length; i++)
        {
            Array.Sort(seconds[i]);
            Array.Sort(clock[i]);
            var median = seconds[i][Rounds / 2];
            await output.WriteLineAsync(
                $"fit of {Sizes[i],4} mountings: {median:0.00} s ({seconds[i][0]:0.00} to {seconds[i][^1]:0.00}), {median / Sizes[i] * 1e3:0.00} ms each; by the clock {clock[i][Rounds / 2]:0.00} s ({clock[i][0]:0.00} to {clock[i][^1]:0.00})");
        }

        return 0;
    }
}
