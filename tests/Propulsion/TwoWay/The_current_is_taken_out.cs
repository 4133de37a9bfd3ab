using CsCheck;

namespace FleetWake.Propulsion.Tests.TwoWay;

public class The_current_is_taken_out
{
    /// <summary>Half of the last digit printed in the reference table.</summary>
    private const double LastDigit = 0.51e-6;

    private static readonly Gen<(double Boat, double Current)> s_trial =
        Gen.Select(Gen.Double[5, 60], Gen.Double[-5, 5]);

    public static TheoryData<string, double[]> Rows
    {
        get
        {
            var rows = new TheoryData<string, double[]>();
            foreach (var row in ReferenceTable.Rows("mean_of_means_vectors.csv"))
                rows.Add(row[0], ReferenceTable.Numbers(row[1..]));
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_of_the_reference_table_holds(string current, double[] row)
    {
        Assert.NotEmpty(current);
        Assert.Equal(row[4], Runs.Alternating(row[0], row[1]).Speed.Knots, LastDigit);
        Assert.Equal(row[5], Runs.Alternating(row[..3]).Speed.Knots, LastDigit);
        Assert.Equal(row[6], Runs.Alternating(row[..4]).Speed.Knots, LastDigit);
        Assert.Equal( // the same four runs, both out before both back: the simple mean
            row[7], Runs.Mean((row[0], 40), (row[2], 40), (row[1], 220), (row[3], 220)).Speed.Knots, LastDigit);
    }

    [Fact]
    public void The_reference_table_has_its_four_rows() => Assert.Equal(4, Rows.Count);

    [Theory]
    [MemberData(nameof(Rows))]
    public void Distance_over_time_is_the_wrong_mean_and_is_not_given(string current, double[] row)
    {
        var harmonic = 2 / ((1 / row[0]) + (1 / row[1]));
        Assert.Equal(row[8], harmonic, LastDigit); // the column marked wrong
        Assert.True(Runs.Alternating(row[0], row[1]).Speed.Knots > harmonic + 0.03, current);
    }

    [Fact]
    public void Two_opposed_runs_remove_any_constant_current() => s_trial.Sample(t =>
        Assert.Equal(t.Boat, Runs.Alternating(t.Boat + t.Current, t.Boat - t.Current).Speed.Knots, 1e-12));

    [Fact]
    public void Three_runs_remove_any_current_linear_in_time() =>
        Gen.Select(s_trial, Gen.Double[-1, 1]).Sample((t, k) => Assert.Equal(
            t.Boat,
            Runs.Alternating(t.Boat + t.Current, t.Boat - (t.Current + k), t.Boat + t.Current + (2 * k)).Speed.Knots,
            1e-12));

    [Fact]
    public void Four_runs_remove_any_current_quadratic_in_time() =>
        Gen.Select(s_trial, Gen.Double[-1, 1], Gen.Double[-1, 1]).Sample((t, k, q) =>
        {
            double Set(double at) => t.Current + (k * at) + (q * at * at);
            var mean = Runs.Alternating(t.Boat + Set(0), t.Boat - Set(1), t.Boat + Set(2), t.Boat - Set(3));
            Assert.Equal(t.Boat, mean.Speed.Knots, 1e-12);
        });

    [Fact]
    public void Two_runs_do_not_remove_a_changing_current() =>
        Assert.Equal(24.8, Runs.Alternating(26.0, 23.6).Speed.Knots, 1e-12); // second row of the table: truth is 25

    [Fact]
    public void The_mean_of_headings_removes_any_constant_current_however_often_each_was_run() =>
        s_trial.Sample(t => Assert.Equal(
            t.Boat,
            Runs.Mean((t.Boat + t.Current, 0), (t.Boat + t.Current, 0), (t.Boat - t.Current, 180)).Speed.Knots,
            1e-12));
}
