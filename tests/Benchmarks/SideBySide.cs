using System.Diagnostics;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Benchmarks;

/// <summary>
/// The same balances by scipy.optimize and by the program, in turns within one run, so that whatever else the machine does meets
/// both. Each side times its own solves; starting Python is not counted.
/// </summary>
internal static class SideBySide
{
    private const int Rounds = 7, ByScipy = 2_000, ByUs = 200_000;

    internal static async Task<int> RunAsync(string? interpreter, TextWriter output)
    {
        using var scipy = await ScipyBalance.StartAsync(interpreter);
        if (scipy is null)
        {
            await output.WriteLineAsync("side-by-side: no python3 with scipy was found (Debian: apt install python3-scipy); nothing was compared.");
            return 1;
        }

        var balance = new WotBalance(OpenWaterSeries.Gawn, InventedBoat.Baseline);
        var ours = Ours(balance, ByScipy); // also the first warming of the code
        foreach (var way in new[] { "root", "brentq" })
        {
            if (await scipy.SolveAsync(way, ByScipy) is not { } theirs)
                return 1;

            await output.WriteLineAsync(
                $"{way}: mean rate by scipy {theirs.Total / ByScipy:0.000000} rpm, by FleetWake {ours.Total / ByScipy:0.000000} rpm");
        }

        Ours(balance, ByUs);
        foreach (var way in new[] { "root", "brentq" })
        {
            var ratios = new double[Rounds];
            for (var round = 0; round < Rounds; round++)
            {
                if (await scipy.SolveAsync(way, ByScipy) is not { } theirs)
                    return 1;

                var (a, b) = (theirs.Seconds / ByScipy, Ours(balance, ByUs).Seconds / ByUs);
                ratios[round] = a / b;
                await output.WriteLineAsync(
                    $"{way} {round + 1}: scipy {a * 1e6:0.00} us, FleetWake {b * 1e6:0.000} us, ratio {ratios[round]:0}");
            }

            Array.Sort(ratios);
            await output.WriteLineAsync(
                $"{way}: ratio {ratios[Rounds / 2]:0} (median of {Rounds}; {ratios[0]:0} to {ratios[^1]:0})");
        }

        return 0;
    }

    private static ScipyBalance.Timed Ours(WotBalance balance, int count)
    {
        var start = Stopwatch.GetTimestamp();
        var total = 0.0;
        for (var i = 0; i < count; i++)
            total += balance.Solve(InventedBoat.State(i)).Rate.RevolutionsPerMinute;
        return new(Stopwatch.GetElapsedTime(start).TotalSeconds, total);
    }
}
