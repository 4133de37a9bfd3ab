using FleetWake.Statistics.Charts;

namespace FleetWake.Statistics.Tests.Charts;

/// <summary>
/// Montgomery's table 9.1 (published, via copies; recomputed) and the examples of the NIST handbook (data from memory;
/// recomputed, limits as remembered); see Reference.
/// </summary>
public class A_CUSUM_and_an_EWMA_for_a_known_level
{
    private static readonly double[][] s_montgomery = Numbers("montgomery_cusum_ewma.csv");

    [Fact]
    public void Montgomerys_sums_runs_and_signal_come_out_as_printed()
    {
        var run = TabularCusum.Run([.. s_montgomery.Select(row => row[1])], target: 10, allowance: 0.5, decision: 5);
        foreach (var (row, sides) in s_montgomery.Zip(run))
        {
            Assert.Equal(row[2], sides.Upper, 1e-9);
            Assert.Equal(row[3], sides.UpperRun);
            Assert.Equal(row[4], sides.Lower, 1e-9);
            Assert.Equal(row[5], sides.LowerRun);
            Assert.Equal(row[6] == 1, sides.SignalsRise || sides.SignalsFall);
        }

        // Printed: the signal comes at period 29 and the shift began seven periods before, after the twenty-second.
        Assert.Equal(29, 1 + run.ToList().FindIndex(sides => sides.SignalsRise));
        Assert.Equal(7, run[28].UpperRun);
    }

    [Fact]
    public void Montgomerys_moving_average_and_its_limits_come_out_as_printed()
    {
        var run = Ewma.Run([.. s_montgomery.Select(row => row[1])], target: 10, sd: 1, lambda: 0.1, width: 2.7);
        foreach (var (row, point) in s_montgomery.Zip(run))
        {
            Assert.Equal(row[7], point.Value, 5e-6);
            Assert.Equal(row[8], point.Low, 5e-6);
            Assert.Equal(row[9], point.High, 5e-6);
            Assert.Equal(row[10] == 1, point.Signals);
        }
    }

    [Fact]
    public void The_handbooks_CUSUM_signals_at_the_fourteenth_group()
    {
        var rows = Numbers("nist_6323_cusum_example.csv");
        var run = TabularCusum.Run([.. rows.Select(row => row[1])], target: 325, allowance: 0.3175, decision: 4.1959);
        foreach (var (row, sides) in rows.Zip(run))
        {
            Assert.Equal(row[2], sides.Upper, 1e-9);
            Assert.Equal(row[3], sides.Lower, 1e-9);
            Assert.Equal(row[4] == 1, sides.SignalsRise);
        }

        Assert.Equal(14, 1 + run.ToList().FindIndex(sides => sides.SignalsRise));
    }

    [Fact]
    public void The_handbooks_EWMA_has_limits_47_41_and_52_59()
    {
        var rows = Numbers("nist_6324_ewma_example.csv");
        var run = Ewma.Run([.. rows.Select(row => row[1])], 50, 2.0539, lambda: 0.3, width: 3, isSettled: true);
        foreach (var (row, point) in rows.Zip(run))
        {
            Assert.Equal(row[2], point.Value, 1e-6);
            Assert.Equal(47.4115, point.Low, 2e-4);
            Assert.Equal(52.5884, point.High, 2e-4);
            Assert.False(point.Signals);
        }
    }

    [Fact]
    public void A_head_start_is_used_up_when_all_is_well()
    {
        var run = TabularCusum.Run([10, 10, 10, 10, 10, 10], 10, 0.5, 5, headStart: 2.5);
        Assert.Equal([2, 1.5, 1, 0.5, 0, 0], run.Select(sides => sides.Upper));
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Assert.Throws<ArgumentOutOfRangeException>("values", () => TabularCusum.Run([double.NaN], 0, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>("allowance", () => TabularCusum.Run([], 0, -1, 1));
        Assert.Throws<ArgumentOutOfRangeException>("decision", () => TabularCusum.Run([], 0, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>("headStart", () => TabularCusum.Run([], 0, 1, 1, 2));
        Assert.Throws<ArgumentOutOfRangeException>("lambda", () => Ewma.Run([], 0, 1, 0, 3));
        Assert.Throws<ArgumentOutOfRangeException>("sd", () => Ewma.Run([], 0, 0, 0.1, 3));
        Assert.Throws<ArgumentOutOfRangeException>("width", () => Ewma.Run([], 0, 1, 0.1, 0));
        Assert.Empty(Ewma.Run([], 0, 1, 0.1, 3));
    }

    private static double[][] Numbers(string file) =>
        [.. ReferenceTable.Rows(file).Select(row => row.Select(ReferenceTable.Number).ToArray())];
}
