using CsCheck;
using FleetWake.Statistics.Charts;

namespace FleetWake.Statistics.Tests.Charts;

/// <summary>Hawkins (1987): T, its normal score and the sum, computed from the definitions (see Reference).</summary>
public class A_CUSUM_that_starts_itself
{
    private static readonly Gen<double[]> s_values = Gen.Double[5000, 5600].Array[3, 15];

    [Theory]
    [InlineData("montgomery_9_1", 0.5)]
    [InlineData("rpm_short", 0.25)]
    public void T_scores_and_sums_are_those_of_the_definition(string series, double k)
    {
        var rows = ReferenceTable.Rows("selfstarting_cusum.csv").Where(row => row[0] == series).ToArray();
        var run = Run(rows.Select(row => ReferenceTable.Number(row[2])), k);
        Assert.Equal(rows.Length, run.Count);
        foreach (var (row, point) in rows.Zip(run))
        {
            Assert.Equal(row[4].Length == 0, point.T is null);
            Assert.Equal(row[5].Length == 0, point.Score is null);
            if (point.T is { } t)
                Assert.Equal(ReferenceTable.Number(row[4]), t, 1e-8);
            if (point.Score is { } u)
                Assert.Equal(ReferenceTable.Number(row[5]), u, 1e-8);
            Assert.Equal(ReferenceTable.Number(row[6]), point.Sums.Upper, 1e-8);
        }
    }

    [Fact]
    public void The_level_and_the_unit_of_the_readings_do_not_matter() => Gen.Select(
        s_values, Gen.Double[0.01, 100], Gen.Double[-1e6, 1e6]).Sample((values, scale, shift) =>
    {
        foreach (var (a, b) in Run(values, 0.25).Zip(Run(values.Select(x => (x * scale) + shift), 0.25)))
        {
            Assert.Equal(a.Sums.Upper, b.Sums.Upper, 1e-4);
            Assert.Equal(a.Sums.Lower, b.Sums.Lower, 1e-4);
        }
    });

    [Fact]
    public void Turned_upside_down_the_sums_change_places() => s_values.Sample(values =>
    {
        foreach (var (a, b) in Run(values, 0.25).Zip(Run(values.Select(x => -x), 0.25)))
        {
            Assert.Equal(a.Sums.Upper, b.Sums.Lower, 1e-9);
            Assert.Equal(a.Sums.LowerRun, b.Sums.UpperRun);
        }
    });

    [Fact]
    public void After_a_step_that_is_known_it_begins_anew()
    {
        double[] first = [5450, 5462, 5438, 5481, 5477], second = [5600, 5590, 5607, 5596];
        var both = SelfStartingCusum.Run(
            [.. first.Select(x => new ChartReading(x, 1)), .. second.Select(x => new ChartReading(x, 2))], 0.25, 3.6);
        Assert.Equal(Run(second, 0.25), both.Skip(5));
    }

    [Fact]
    public void One_bad_reading_alone_brings_no_signal_when_scores_are_clipped()
    {
        double[] values = [5450, 5462, 5438, 5455, 5447, 5460, 6460];
        Assert.True(Run(values, 0.25)[^1].Sums.SignalsRise);
        Assert.False(Run(values, 0.25, clip: 2.5)[^1].Sums.SignalsRise);
    }

    [Fact]
    public void Readings_that_are_all_alike_say_nothing_and_the_first_that_differs_says_all_there_is_to_say()
    {
        var run = Run([5500, 5500, 5500, 5500, 5510], 0.25);
        Assert.All(run.Take(4), point => Assert.Equal(0, point.Sums.Upper));
        Assert.Equal(SelfStartingCusum.FarthestScore, run[^1].Score);
        Assert.Null(run[^1].T);

        // With the step of the gauge known it is one step in fifty, and no more.
        Assert.InRange(Run([5500, 5500, 5500, 5500, 5510], 0.25, noiseFloor: 14.4)[^1].Score!.Value, 0, 1);
    }

    [Fact]
    public void However_large_a_jump_the_score_stays_a_number()
    {
        var run = Run([.. Enumerable.Range(0, 60).Select(i => 5500 + (i % 2 * 1e-6)), 1e99], 0.25);
        Assert.Equal(SelfStartingCusum.FarthestScore, run[^1].Score);
    }

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Assert.Throws<ArgumentOutOfRangeException>("readings", () => Run([double.NaN], 0.25));
        Assert.Throws<ArgumentOutOfRangeException>("readings", () => Run([1e101], 0.25));
        Assert.Throws<ArgumentOutOfRangeException>("allowance", () => Run([], -1));
        Assert.Throws<ArgumentOutOfRangeException>("clip", () => Run([], 0.25, clip: 0));
        Assert.Throws<ArgumentOutOfRangeException>("noiseFloor", () => Run([], 0.25, noiseFloor: -1));
        Assert.Throws<ArgumentOutOfRangeException>("decision", () => SelfStartingCusum.Run([], 0.25, 0));
        Assert.Empty(Run([], 0.25));
    }

    private static IReadOnlyList<SelfStartingPoint> Run(
        IEnumerable<double> values, double k, double clip = SelfStartingCusum.FarthestScore, double noiseFloor = 0) =>
        SelfStartingCusum.Run([.. values.Select(x => new ChartReading(x, 0))], k, 3.6, clip, noiseFloor);
}
