using FleetWake.Statistics.Charts;

namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>
/// The charts themselves, run on drawn readings, against tables of average run lengths (status of each in Reference): what the
/// equations of <see cref="RunLength"/> solve is what the charts do.
/// </summary>
public class Charts_take_as_long_as_the_tables_say
{
    private const int Runs = 2000;

    [Theory]
    [InlineData("0.00")]
    [InlineData("0.50")]
    [InlineData("1.00")]
    public void CUSUMs_those_of_Lucas_and_Crosier_with_and_without_a_head_start(string shift)
    {
        var row = ReferenceTable.Rows("arl_cusum_twosided.csv").Single(row => row[0] == shift);
        Takes(row[1], Mean(shift), x => First(TabularCusum.Run(x, 0, 0.5, 4), s => s.SignalsRise || s.SignalsFall));
        Takes(row[3], Mean(shift), x => First(TabularCusum.Run(x, 0, 0.5, 4, headStart: 2), s => s.SignalsRise || s.SignalsFall));
    }

    [Theory]
    [InlineData("0.25")]
    [InlineData("0.50")]
    [InlineData("1.00")]
    public void EWMAs_those_of_Lucas_and_Saccucci(string shift)
    {
        var row = ReferenceTable.Rows("arl_ewma_lucas_saccucci.csv").Single(row => row[0] == shift);
        Takes(row[1], Mean(shift), x => First(Ewma.Run(x, 0, 1, 0.5, 3.071, isSettled: true), p => p.Signals));
        Takes(row[3], Mean(shift), x => First(Ewma.Run(x, 0, 1, 0.03, 2.437, isSettled: true), p => p.Signals));
    }

    [Theory]
    [InlineData("0.02")]
    [InlineData("0.10")]
    public void Both_under_a_drift_those_of_spc(string drift)
    {
        var row = ReferenceTable.Rows("arl_linear_drift_spc.csv").Single(row => row[0] == drift);
        var perReading = ReferenceTable.Number(drift);
        Takes(row[2], i => perReading * i, x => First(TabularCusum.Run(x, 0, 0.5, 4.77), s => s.SignalsRise));
        Takes(row[3], i => perReading * i, x => First(Ewma.Run(x, 0, 1, 0.1, 2.7, isSettled: true), p => p.Signals));
    }

    private static Func<int, double> Mean(string shift) => _ => ReferenceTable.Number(shift);

    /// <summary>Within three and a half standard errors and the table's own rounding.</summary>
    private static void Takes(string table, Func<int, double> mean, Func<double[], int?> run)
    {
        var draws = new Draws(1982);
        var lengths = new double[Runs];
        for (var i = 0; i < Runs; i++)
        {
            double[] readings = [];
            int? found = null;
            for (var more = 64; found is null; more *= 2)
            {
                var from = readings.Length;
                readings = [.. readings, .. Enumerable.Range(from + 1, more).Select(n => mean(n) + draws.Normal())];
                found = run(readings);
            }

            lengths[i] = found.Value;
        }

        var (expected, average) = (ReferenceTable.Number(table), lengths.Average());
        var error = Math.Sqrt(lengths.Average(n => (n - average) * (n - average)) / Runs);
        Assert.Equal(expected, average, (3.5 * error) + (0.01 * expected));
    }

    private static int? First<T>(IReadOnlyList<T> run, Func<T, bool> signals)
    {
        for (var i = 0; i < run.Count; i++)
        {
            if (signals(run[i])) return i + 1;
        }

        return null;
    }
}
