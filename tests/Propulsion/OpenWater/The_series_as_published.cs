using FleetWake.Propulsion.OpenWater;
using static FleetWake.Propulsion.Tests.OpenWater.SeriesTables;

namespace FleetWake.Propulsion.Tests.OpenWater;

/// <summary>Sources and their standing: Reference/PROVENANCE.md.</summary>
public class The_series_as_published
{
    public static TheoryData<string[]> Vectors => [.. Rows("series_test_vectors.csv")];

    public static TheoryData<string[]> Readings => [.. Rows("series_published_checks.csv")];

    [Fact]
    public void The_tables_in_the_code_are_the_reference_tables_digit_by_digit()
    {
        Assert.Equal(Terms("bseries_kt.csv"), WageningenBTerms.Thrust);
        Assert.Equal(Terms("bseries_kq.csv"), WageningenBTerms.Torque);
        Assert.Equal(Terms("bseries_reynolds_dkt.csv"), WageningenBTerms.ThrustByReynolds);
        Assert.Equal(Terms("bseries_reynolds_dkq.csv"), WageningenBTerms.TorqueByReynolds);
        Assert.Equal(Terms("gawn_kt.csv"), GawnTerms.Thrust);
        Assert.Equal(Terms("gawn_kq.csv"), GawnTerms.Torque);
        Assert.Equal(TermsByMantissa("kca_kt.csv"), GawnBurrillTerms.Thrust);
        Assert.Equal(TermsByMantissa("kca_kq.csv"), GawnBurrillTerms.Torque);
        Assert.Equal((39, 47), (WageningenBTerms.Thrust.Length, WageningenBTerms.Torque.Length));
    }

    /// <summary>Computed from the polynomials by another program.</summary>
    [Theory]
    [MemberData(nameof(Vectors))]
    public void Every_vector_holds_to_its_last_digit(string[] row)
    {
        var point = PointOf(row[0], row[1..5]);
        Assert.Equal(Number(row[5]), point.ThrustCoefficient, 1e-7);
        Assert.Equal(Number(row[6]), point.TorqueCoefficient, 1e-8);
        Assert.Equal(Number(row[7]), point.Efficiency, 1e-6);
    }

    /// <summary>
    /// Readings from the charts of Kuiper 1992, Bernitsas, Ray and Kinley 1981 and Radojcic 1988, all second-hand, within the
    /// tolerance that each can be read to.
    /// </summary>
    [Theory]
    [MemberData(nameof(Readings))]
    public void Every_reading_from_a_published_chart_agrees(string[] row)
    {
        var point = PointOf(row[0], row[2..6]);
        var value = row[1] == "KT" ? point.ThrustCoefficient : point.TorqueCoefficient;
        Assert.Equal(Number(row[6]), value, Number(row[9]));
    }

    [Fact]
    public void The_reference_tables_are_whole() => Assert.Equal((70, 140), (Vectors.Count, Readings.Count));

    private static OpenWaterPoint PointOf(string series, string[] cells) =>
        Named(series).At(new BladeShape((int)Number(cells[0]), Number(cells[1]), Number(cells[2])), Number(cells[3]));
}
