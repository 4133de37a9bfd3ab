using System.Diagnostics;
using System.Globalization;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>
/// R as a second opinion: the same cases, drawn from a fixed beginning, by R's own functions and by the program. A line for each
/// method; 1 when one of them differs by more than its tolerance, or there is no R.
/// </summary>
internal static class Oracle
{
    private const string Wanted = "(Debian: apt install r-base-core r-cran-survival r-cran-nlme); nothing was compared.";

    internal static async Task<int> RunAsync(TextWriter output)
    {
        Func<Chance, OracleMethod>[] makers =
        [
            LifeCases.KaplanMeierCurves, LifeCases.LogRanks, LifeCases.Weibulls, CountCases.PoissonTests, CountCases.Needs, CountCases.Losses,
            PoolCases.Alike, PoolCases.Unlike, LineCases.Lines, DriftCases.Regressions, DriftCases.Mixtures,
        ];
        // Each begins its own draws, so that a new one changes no other.
        var methods = makers.Select((make, i) => make(new Chance(1000 + i))).ToArray();
        var folder = Directory.CreateTempSubdirectory("oracle-");
        try
        {
            foreach (var (file, text) in methods.SelectMany(method => method.Tables))
                await File.WriteAllTextAsync(Path.Combine(folder.FullName, $"{file}.csv"), text);
            return await AskAsync(folder.FullName, output) is { } theirs ? await CompareAsync(methods, theirs, output) : 1;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<int> CompareAsync(OracleMethod[] methods, ILookup<string, (string Key, double Value)> theirs, TextWriter output)
    {
        var failed = 0;
        foreach (var method in methods)
        {
            var (difference, key) = method.Compared(theirs[method.Name].ToDictionary(r => r.Key, r => r.Value));
            var ok = difference <= method.Tolerance;
            failed += ok ? 0 : 1;
            await output.WriteLineAsync(
                $"{method.Name,-10} {method.Cases,4} cases {method.Ours.Count,5} numbers, largest relative difference {difference:0.0e-00} of {method.Tolerance:0e-00}: {(ok ? "ok" : $"FAILED at {key}")}   {method.Against}");
        }

        await output.WriteLineAsync($"{methods.Length - failed} methods agree, {failed} do not.");
        return failed == 0 ? 0 : 1;
    }

    private static async Task<ILookup<string, (string Key, double Value)>?> AskAsync(string folder, TextWriter output)
    {
        Process? started;
        try
        {
            started = Process.Start(new ProcessStartInfo("Rscript")
            {
                ArgumentList = { "--vanilla", Path.Combine(AppContext.BaseDirectory, "oracle.R"), folder },
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            });
        }
        catch (System.ComponentModel.Win32Exception)
        {
            started = null;
        }

        if (started is not { } r)
        {
            await output.WriteLineAsync($"oracle: no Rscript was found on the PATH {Wanted}");
            return null;
        }

        using (r)
        {
            var said = r.StandardOutput.ReadToEndAsync();
            var complained = await r.StandardError.ReadToEndAsync();
            await output.WriteAsync(await said);
            await r.WaitForExitAsync();
            if (r.ExitCode != 0)
            {
                await output.WriteLineAsync($"oracle: R ended with {r.ExitCode}. {complained.Trim()}. All packages {Wanted}");
                return null;
            }
        }

        return (await File.ReadAllLinesAsync(Path.Combine(folder, "results.csv")))
            .Select(line => line.Split(','))
            .ToLookup(cells => cells[0], cells => (cells[1], double.Parse(cells[2], CultureInfo.InvariantCulture)));
    }
}
