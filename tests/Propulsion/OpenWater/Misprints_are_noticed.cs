using FleetWake.Propulsion.OpenWater;
using static FleetWake.Propulsion.Tests.OpenWater.SeriesTables;

namespace FleetWake.Propulsion.Tests.OpenWater;

/// <summary>Misprints of the coefficients circulate in public copies; each is put in here and must be noticed.</summary>
public class Misprints_are_noticed
{
    /// <summary>The wrong digits of the table of known bad variants, less the one that only moves a Reynolds increment.</summary>
    public static TheoryData<string, byte[], double, double> Wrong
    {
        get
        {
            var wrong = new TheoryData<string, byte[], double, double>();
            foreach (var row in Rows("series_known_bad_variants.csv").Where(row => row[0] is "B KQ" or "B KT"))
                wrong.Add(row[0], [.. row[1].Split(',').Select(byte.Parse)], Number(row[2]), Number(row[3]));
            return wrong;
        }
    }

    [Fact]
    public void Six_misprints_of_the_B_series_are_known() => Assert.Equal(6, Wrong.Count);

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_coefficient_fails_the_vectors(string table, byte[] powers, double right, double wrong)
    {
        var thrust = table == "B KT" ? Misprinted(WageningenBTerms.Thrust, powers, right, wrong) : WageningenBTerms.Thrust;
        var torque = table == "B KQ" ? Misprinted(WageningenBTerms.Torque, powers, right, wrong) : WageningenBTerms.Torque;
        Assert.True(VectorsThatFail(Series(thrust, torque)) > 0);
    }

    /// <summary>As one public source has them: the columns of P/D and of the area exchanged.</summary>
    [Fact]
    public void Exchanged_columns_fail_the_vectors() => Assert.True(Rows("series_test_vectors.csv").Count(row =>
        row[0] == "B" && Fails(OpenWaterSeries.WageningenB, row, new((int)Number(row[1]), Number(row[3]), Number(row[2])))) > 25);

    /// <summary>
    /// A check that needs no table at all: a prop cannot push while nothing turns it. The reference's own count is 378 shapes
    /// without a violation.
    /// </summary>
    [Fact]
    public void Thrust_ends_before_torque_in_every_shape_of_the_B_series() =>
        Assert.Equal(0, ShapesThatPushWithoutTorque(OpenWaterSeries.WageningenB));

    [Theory]
    [InlineData(0.000112451, -0.000112451, 3, 2, 0, 2)]
    [InlineData(-0.0000297228, -0.000297228, 3, 6, 0, 2)]
    public void A_wrong_sign_or_power_of_ten_lets_torque_end_before_thrust(double right, double wrong, params int[] powers) =>
        Assert.True(ShapesThatPushWithoutTorque(Series(
            WageningenBTerms.Thrust,
            Misprinted(WageningenBTerms.Torque, [.. powers.Select(p => (byte)p)], right, wrong))) > 0);

    /// <summary>One source only has them, either way; the difference is below 2e-5 and nothing here can settle it.</summary>
    [Fact]
    public void Two_doubtful_digits_of_Gawn_stand_as_found()
    {
        Assert.Contains(new SeriesTerm(0.0025963, 2, 0, 0, 2), GawnTerms.Thrust);
        Assert.Contains(new SeriesTerm(0.0035895, 3, 0, 1, 1), GawnTerms.Torque);
    }

    [Fact]
    public void The_misprint_of_a_Reynolds_increment_is_not_in_the_table() =>
        Assert.Contains(new SeriesTerm(-8.8528e-07, 1, 1, 1, 1, 2), WageningenBTerms.TorqueByReynolds);

    private static SeriesTerm[] Misprinted(SeriesTerm[] terms, byte[] powers, double right, double wrong)
    {
        var term = new SeriesTerm(right, powers[0], powers[1], powers[2], powers[3]);
        Assert.Single(terms, term);
        return [.. terms.Select(t => t == term ? t with { C = wrong } : t)];
    }

    private static OpenWaterSeries Series(SeriesTerm[] thrust, SeriesTerm[] torque) =>
        new("B with a misprint", OpenWaterSeries.WageningenB.Range, thrust, torque);

    private static int VectorsThatFail(OpenWaterSeries series) => Rows("series_test_vectors.csv").Count(row =>
        row[0] == "B" && Fails(series, row, new((int)Number(row[1]), Number(row[2]), Number(row[3]))));

    private static bool Fails(OpenWaterSeries series, string[] row, BladeShape shape)
    {
        var point = series.At(shape, Number(row[4]));
        return Math.Abs(point.ThrustCoefficient - Number(row[5])) > 1e-7
            || Math.Abs(point.TorqueCoefficient - Number(row[6])) > 1e-8;
    }

    private static int ShapesThatPushWithoutTorque(OpenWaterSeries series)
    {
        var wrong = 0;
        foreach (var blades in new[] { 3, 4, 5 })
        {
            for (var area = 0.35; area < 1.001; area += 0.05)
            {
                for (var pitch = 0.6; pitch < 1.401; pitch += 0.1)
                {
                    var curve = series.Curve(new(blades, area, pitch));
                    wrong += curve.EndOfThrust < (curve.EndOfTorque ?? double.PositiveInfinity) ? 0 : 1;
                }
            }
        }

        return wrong;
    }
}
