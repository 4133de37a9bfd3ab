using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using FleetWake.Statistics.Drift;

namespace FleetWake.Benchmarks.Drift;

/// <summary>
/// The same mountings of twelve trials by numpy and by the program, in turns within one run, a thread each. Both must first have
/// found the same drift, limits, level, evidence and gross errors. Counted is the processor time of each process, so that
/// neighbours count less; ours has its garbage collection in it.
/// </summary>
internal static class NumpyDrift
{
    private const int Mountings = 40, Rounds = 9, ByNumpy = 10, ByUs = 100;
    private const double Alike = 1e-6;

    private static readonly DriftSettings Settings = DriftSettings.Recommended;
    private static readonly SlopePrior Prior = SlopePrior.SoundOrWearing(0.15, 2, 12);

    internal static async Task<int> RunAsync(string? interpreter, TextWriter output)
    {
        var series = InventedMountings.Draw(Mountings, 12).Select(m => m.Series).ToArray();
        foreach (var candidate in Python.Candidates(interpreter))
        {
            if (Python.Start(candidate, "numpy_drift.py") is not { } python) continue;
            using (python)
            {
                try
                {
                    if (await AskAsync(python, series) is { } theirs) return await RaceAsync(python, series, theirs, output);
                }
                finally
                {
                    if (!python.HasExited) python.Kill();
                }
            }
        }

        await output.WriteLineAsync("side-by-side: no python3 with numpy was found (Debian: apt install python3-numpy); drift was not compared.");
        return 1;
    }

    /// <summary>What numpy makes of each; null when it is gone.</summary>
    private static async Task<double[][]?> AskAsync(Process python, DriftSeries[] series)
    {
        try
        {
            await python.StandardInput.WriteLineAsync(JsonSerializer.Serialize(new
            {
                shares = Settings.Noise.Shares.ToArray(),
                weights = Settings.Noise.Weights.ToArray(),
                grossChance = Settings.GrossChance,
                grossShare = Settings.GrossShare,
                levelSd = Settings.LevelSdRpm,
                airShare = Settings.TemperatureSdShare,
                loadShare = Settings.LoadSdShare,
                prior = Prior.Weights.ToArray(),
            }));
            await python.StandardInput.WriteLineAsync(JsonSerializer.Serialize(series.Select(s => new
            {
                hours = s.Trials.Select(t => t.EngineHours),
                rpm = s.Trials.Select(t => t.Rpm),
                air = s.Trials.Select(t => t.AirCelsius),
                load = s.Trials.Select(t => t.LoadKilograms),
                level = Settings.LevelShare * (s.RatedMinRpm + s.RatedMaxRpm) / 2,
                steps = Steps(s),
            })));
            await python.StandardInput.FlushAsync();
        }
        catch (IOException)
        {
            return null; // it ended at its first import
        }

        return await python.StandardOutput.ReadLineAsync() is { } line ? JsonSerializer.Deserialize<double[][]>(line) : null;
    }

    /// <summary>First trial after, mean and variance of each step; events between the same two trials are one.</summary>
    private static IEnumerable<double[]> Steps(DriftSeries s) => s.Events
        .GroupBy(e => s.Trials.Count(t => t.Week <= e.Week)).Where(step => step.Key > 0 && step.Key < s.Trials.Count).OrderBy(step => step.Key)
        .Select(step => new[]
        {
            step.Key,
            step.Sum(e => e.Kind == StepKind.Strike ? Settings.StrikeMeanRpm : 0),
            step.Sum(e => Math.Pow(e.Kind == StepKind.Strike ? Settings.StrikeSdRpm : Settings.RepitchSdRpm, 2)),
        });

    private static async Task<int> RaceAsync(Process python, DriftSeries[] series, double[][] theirs, TextWriter output)
    {
        var difference = series.Select(Found).Zip(theirs).Max(m => m.First.Zip(m.Second).Max(x => Math.Abs(x.First - x.Second) / Math.Max(1, Math.Abs(x.Second))));
        await output.WriteLineAsync($"drift: {Mountings} mountings, {theirs.Sum(m => m.Length)} numbers by numpy and by FleetWake, largest relative difference {difference:0.0e-00}");
        if (!(difference <= Alike)) return 1;

        // Without a band there is no exit to forecast, which numpy leaves out as well: the same work on both sides.
        var noBand = series.Select(s => s with { RatedMinRpm = double.NaN, RatedMaxRpm = double.NaN }).ToArray();
        Ours(series, 30 * ByUs); // warms the code until the compiler has done with it: it takes some seconds
        Ours(noBand, 30 * ByUs);
        var rounds = new (double Numpy, double Whole, double Same)[Rounds];
        for (var round = 0; round < Rounds; round++)
        {
            await python.StandardInput.WriteLineAsync($"{ByNumpy}");
            await python.StandardInput.FlushAsync();
            if (await python.StandardOutput.ReadLineAsync() is not { } line) return 1;

            var numpy = double.Parse(line, CultureInfo.InvariantCulture) / ByNumpy / Mountings;
            var (whole, same) = (Ours(series, ByUs) / ByUs / Mountings, Ours(noBand, ByUs) / ByUs / Mountings);
            rounds[round] = (numpy, whole, same);
            await output.WriteLineAsync(
                $"drift {round + 1}: numpy {numpy * 1e6:0} us; FleetWake {whole * 1e6:0.0} us, ratio {numpy / whole:0.0}; without the exit {same * 1e6:0.0} us, ratio {numpy / same:0.0}");
        }

        await output.WriteLineAsync($"drift: numpy {Median(rounds.Select(r => r.Numpy)) * 1e6:0} us");
        await output.WriteLineAsync(Told("FleetWake, whole", rounds.Select(r => r.Whole), rounds.Select(r => r.Numpy / r.Whole)));
        await output.WriteLineAsync(Told("FleetWake, without the exit", rounds.Select(r => r.Same), rounds.Select(r => r.Numpy / r.Same)));
        return 0;
    }

    private static string Told(string what, IEnumerable<double> seconds, IEnumerable<double> ratios) =>
        $"drift: {what} {Median(seconds) * 1e6:0.0} us, ratio {Median(ratios):0.0} (medians of {Rounds}; {ratios.Min():0.0} to {ratios.Max():0.0})";

    private static double[] Found(DriftSeries series)
    {
        var found = DriftEstimator.Assess(series, Prior, Settings);
        var (drift, level) = (found.RpmPer100Hours, found.LevelRpm!);
        return [drift.Value, drift.Low, drift.High, level.Value, level.StandardError, found.LogEvidence, .. found.GrossChances];
    }

    private static double Ours(DriftSeries[] series, int times)
    {
        var start = Environment.CpuUsage.TotalTime;
        for (var i = 0; i < times; i++)
        {
            foreach (var s in series) DriftEstimator.Assess(s, Prior, Settings);
        }

        return (Environment.CpuUsage.TotalTime - start).TotalSeconds;
    }

    private static double Median(IEnumerable<double> values) => values.Order().ElementAt(Rounds / 2);
}
