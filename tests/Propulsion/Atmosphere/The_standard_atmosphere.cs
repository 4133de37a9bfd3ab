using CsCheck;
using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Tests.Atmosphere;

/// <summary>ISO 2533:1975; vectors computed from its formulas, see Reference/PROVENANCE.md.</summary>
public class The_standard_atmosphere
{
    public static TheoryData<double, double[]> Rows
    {
        get
        {
            var rows = new TheoryData<double, double[]>();
            foreach (var row in ReferenceTable.Rows("isa_vectors.csv").Select(ReferenceTable.Numbers))
                rows.Add(row[0], row[1..]);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_of_the_reference_table_holds(double metres, double[] expected)
    {
        var altitude = Length.FromMetres(metres);
        Assert.Equal(expected[0], StandardAtmosphere.TemperatureAt(altitude).Kelvin, 1e-9);
        Assert.Equal(expected[1], StandardAtmosphere.PressureAt(altitude).Pascals, 0.05);
        Assert.Equal(expected[2], StandardAtmosphere.DensityAt(altitude).KilogramsPerCubicMetre, 1e-6);
        Assert.Equal(
            expected[3], StandardAtmosphere.DensityAt(altitude).KilogramsPerCubicMetre / 1.225, 1e-6);
    }

    [Fact]
    public void The_reference_table_has_its_nine_rows() => Assert.Equal(9, Rows.Count);

    /// <summary>ISO 2533:1975, table for 11 km: 216.65 K, 226.32 hPa, 0.36392 kg/m3 (from memory).</summary>
    [Fact]
    public void At_11_kilometres_the_troposphere_ends()
    {
        var top = Length.FromMetres(11_000);
        Assert.Equal(216.65, StandardAtmosphere.TemperatureAt(top).Kelvin, 1e-9);
        Assert.Equal(226.32, StandardAtmosphere.PressureAt(top).Hectopascals, 0.005);
        Assert.Equal(0.36392, StandardAtmosphere.DensityAt(top).KilogramsPerCubicMetre, 5e-6);
        Assert.Throws<ArgumentOutOfRangeException>(
            "altitude", () => StandardAtmosphere.PressureAt(Length.FromMetres(11_001)));
    }

    [Fact]
    public void Altitude_from_pressure_is_pressure_from_altitude_turned_round() =>
        Gen.Double[0, 11_000].Sample(metres => Assert.Equal(
            metres,
            StandardAtmosphere.AltitudeAt(StandardAtmosphere.PressureAt(Length.FromMetres(metres))).Metres,
            1e-6));

    [Fact]
    public void A_pressure_above_the_standard_one_has_no_altitude() => Assert.Throws<ArgumentOutOfRangeException>(
        "pressure", () => StandardAtmosphere.AltitudeAt(Pressure.FromHectopascals(1030)));
}
