using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Tests.Atmosphere;

/// <summary>CIPM-2007, Picard et al., Metrologia 45 (2008) 149-155; vectors computed, see Reference/PROVENANCE.md.</summary>
public class Moist_air
{
    public static TheoryData<double, double, double, double[]> Rows
    {
        get
        {
            var rows = new TheoryData<double, double, double, double[]>();
            foreach (var row in ReferenceTable.Rows("moist_air_vectors.csv").Select(ReferenceTable.Numbers))
                rows.Add(row[0], row[1], row[2], row[3..]);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_of_the_reference_table_holds(double celsius, double pascals, double humidity, double[] expected)
    {
        var (t, p) = (Temperature.FromCelsius(celsius), Pressure.FromPascals(pascals));
        var cipm = MoistAir.CipmDensity(t, p, humidity).KilogramsPerCubicMetre;
        var simple = MoistAir.IdealGasDensity(t, p, humidity).KilogramsPerCubicMetre;
        Assert.Equal(expected[3], cipm, 0.51e-6);
        Assert.Equal(expected[4], simple, 0.51e-6);
        Assert.InRange(Math.Abs((simple / cipm) - 1), 0, 0.0007); // what the simple form claims of itself
    }

    [Fact]
    public void The_reference_table_has_its_ten_rows() => Assert.Equal(10, Rows.Count);

    /// <summary>Saturation pressures of the same table are those of CIPM-2007; Magnus' form keeps within 0.4 % of them.</summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void The_simple_vapour_pressure_is_close_to_the_exact_one(
        double celsius, double pascals, double humidity, double[] expected)
    {
        Assert.True(pascals > 0 && humidity >= 0);
        Assert.Equal(
            expected[0],
            MoistAir.SaturationPressure(Temperature.FromCelsius(celsius)).Pascals,
            0.004 * expected[0]);
    }

    [Fact]
    public void Damp_air_is_lighter_than_dry_air()
    {
        var (t, p) = (Temperature.FromCelsius(30), Pressure.FromHectopascals(1013));
        Assert.True(MoistAir.CipmDensity(t, p, 1).KilogramsPerCubicMetre
            < MoistAir.CipmDensity(t, p, 0).KilogramsPerCubicMetre);
    }

    [Fact]
    public void Dry_pressure_is_what_the_vapour_leaves()
    {
        var (t, p) = (Temperature.FromCelsius(30), Pressure.FromPascals(101_325));
        Assert.Equal(97_935.7, MoistAir.DryPressure(t, p, 0.8).Pascals, 0.05); // power_correction_vectors.csv
        Assert.Equal(p, MoistAir.DryPressure(t, p, 0));
    }

    [Fact]
    public void Seventy_is_no_fraction_and_the_refusal_says_so()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(
            "relativeHumidityFraction", () => MoistAir.VapourPressure(Temperature.FromCelsius(20), 70));
        Assert.Contains("from 0 to 1", refused.Message, StringComparison.Ordinal);
        Assert.Equal(70.0, refused.ActualValue);
    }

    [Fact]
    public void Air_that_no_engine_breathes_is_refused()
    {
        var p = Pressure.FromHectopascals(1013);
        Assert.Throws<ArgumentOutOfRangeException>("temperature", () => MoistAir.CipmDensity(Temperature.FromCelsius(61), p, 0));
        Assert.Throws<ArgumentOutOfRangeException>(
            "stationPressure", () => MoistAir.CipmDensity(Temperature.FromCelsius(20), Pressure.FromHectopascals(200), 0));
        Assert.Throws<ArgumentOutOfRangeException>(
            "relativeHumidityFraction", () => MoistAir.CipmDensity(Temperature.FromCelsius(20), p, double.NaN));
    }
}
