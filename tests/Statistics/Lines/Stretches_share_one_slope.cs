using CsCheck;
using MathNet.Numerics.LinearAlgebra;

namespace FleetWake.Statistics.Tests.Lines;

/// <summary>
/// The analysis of covariance against a QR solution of the design with one dummy column per stretch and one for x
/// (MathNet): the same least squares, by no common formula.
/// </summary>
public class Stretches_share_one_slope
{
    private static readonly LinePoint[] s_threeBaselines =
    [
        new(0, 5610, 0), new(22, 5621, 0), new(41, 5618, 0), new(60, 5640, 0),
        new(71, 5702, 3), new(95, 5699, 3), new(118, 5723, 3),
        new(130, 5590, 7),
    ];

    [Fact]
    public void Three_baselines_agree_with_QR() => AgreesWithQr(s_threeBaselines);

    [Fact]
    public void Any_stretches_agree_with_QR() => Line.Scattered.Where(Line.CarriesALine).Sample(AgreesWithQr);

    [Fact]
    public void The_greatest_number_is_the_last_stretch_whatever_the_order()
    {
        var fit = Line.Fitted([.. s_threeBaselines.Reverse()]);
        Assert.Equal(7, fit.LastStretch);
        Assert.Equal(fit.LevelOf(7, 150), fit.At(150));
        Line.Close(Line.Fitted(s_threeBaselines).Slope.Value, fit.Slope.Value, 1e-12);
    }

    [Fact]
    public void A_stretch_of_one_reading_has_a_level_but_no_say_in_the_slope()
    {
        var with = Line.Fitted(s_threeBaselines);
        var without = Line.Fitted(s_threeBaselines[..7]);
        Assert.Equal(without.Slope, with.Slope);
        Assert.Equal(without.DegreesOfFreedom, with.DegreesOfFreedom);
        Assert.Equal(5590, with.At(130).Value, 1e-9);
        Line.Close(with.ResidualSd, with.At(130).StandardError, 1e-12);
    }

    [Fact]
    public void A_new_baseline_is_not_taken_for_drift()
    {
        LinePoint[] step = [new(0, 10, 0), new(1, 10, 0), new(2, 10, 0), new(3, 90, 1), new(4, 90, 1), new(5, 90, 1)];
        Assert.Equal(0, Line.Fitted(step).Slope.Value, 1e-12);
        Assert.True(Line.Fitted([.. step.Select(p => p with { Stretch = 0 })]).Slope.Value > 15);
    }

    [Fact]
    public void An_unknown_stretch_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(
        "stretch", () => Line.Fitted(s_threeBaselines).LevelOf(1, 0));

    private static void AgreesWithQr(LinePoint[] points)
    {
        var stretches = points.Select(p => p.Stretch).Distinct().Order().ToList();
        var p = stretches.Count + 1;
        double[] Row(int stretch, double x) => [.. stretches.Select(s => s == stretch ? 1.0 : 0.0), x];

        var design = Matrix<double>.Build.DenseOfRowArrays(points.Select(q => Row(q.Stretch, q.X)));
        var y = Vector<double>.Build.DenseOfEnumerable(points.Select(q => q.Y));
        var qr = design.QR();
        var beta = qr.Solve(y);
        var s = (y - (design * beta)).L2Norm() / Math.Sqrt(points.Length - p);
        var rInverse = qr.R.SubMatrix(0, p, 0, p).Inverse();

        var fit = Line.Fitted(points);
        Assert.Equal(points.Length - p, fit.DegreesOfFreedom);
        Assert.Equal(s, fit.ResidualSd, 1e-8);
        foreach (var stretch in stretches)
        {
            foreach (var x in new[] { 0.0, 55, 300 })
            {
                var c = Vector<double>.Build.Dense(Row(stretch, x));
                var estimate = fit.LevelOf(stretch, x);
                Assert.Equal(c * beta, estimate.Value, 1e-7);
                Line.Close(s * rInverse.LeftMultiply(c).L2Norm(), estimate.StandardError, 1e-8, scale: 1);
            }
        }

        Line.Close(beta[p - 1], fit.Slope.Value, 1e-9, scale: 1);
        Line.Close(s * rInverse.Row(p - 1).L2Norm(), fit.Slope.StandardError, 1e-8, scale: 0.01);
    }
}
