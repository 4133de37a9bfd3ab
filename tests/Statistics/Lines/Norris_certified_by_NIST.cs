namespace FleetWake.Statistics.Tests.Lines;

/// <summary>
/// NIST StRD, Norris: the one set of that collection that is a straight line with an intercept (see Reference).
/// Ten digits are asked for; the certified values have fifteen.
/// </summary>
public class Norris_certified_by_NIST
{
    private const double TenDigits = 1e-10;

    private static readonly Dictionary<string, (double Value, string Sd)> s_certified =
        ReferenceTable.Rows("strd_norris_certified.csv")
            .ToDictionary(row => row[1], row => (ReferenceTable.Number(row[2]), row[3]));

    private static readonly LinePoint[] s_points =
    [
        .. ReferenceTable.Rows("strd_norris.csv")
            .Select(row => new LinePoint(ReferenceTable.Number(row[1]), ReferenceTable.Number(row[0]), 0)),
    ];

    private static readonly LineFit s_fit = Line.Fitted(s_points);

    [Fact]
    public void All_36_readings_are_used_and_34_degrees_of_freedom_are_left()
    {
        Assert.Equal(36, s_fit.Points);
        Assert.Equal(34, s_fit.DegreesOfFreedom);
    }

    [Fact]
    public void The_slope_and_its_standard_error_are_the_certified_ones() => Certified("B1", s_fit.Slope);

    [Fact]
    public void The_intercept_and_its_standard_error_are_the_certified_ones() => Certified("B0", s_fit.At(0));

    [Fact]
    public void The_residual_standard_deviation_is_the_certified_one() =>
        Line.Close(s_certified["RESIDUAL_SD"].Value, s_fit.ResidualSd, TenDigits);

    [Fact]
    public void The_F_statistic_is_the_square_of_slope_over_its_error() => Line.Close(
        s_certified["F_STATISTIC"].Value, Math.Pow(s_fit.Slope.Value / s_fit.Slope.StandardError, 2), TenDigits);

    [Fact]
    public void A_large_offset_costs_no_digit_that_the_readings_still_have()
    {
        var far = Line.Fitted([.. s_points.Select(p => p with { X = p.X + 1e6, Y = p.Y + 1e6 })]);
        Line.Close(s_fit.Slope.Value, far.Slope.Value, 1e-10);
        Line.Close(s_fit.ResidualSd, far.ResidualSd, 1e-8);
    }

    private static void Certified(string parameter, Estimate estimate)
    {
        Line.Close(s_certified[parameter].Value, estimate.Value, TenDigits);
        Line.Close(ReferenceTable.Number(s_certified[parameter].Sd), estimate.StandardError, TenDigits);
    }
}
