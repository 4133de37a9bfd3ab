using CsCheck;
using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Tests.Atmosphere;

/// <summary>SAE J1349 (form of 1990) and the ISO 1585 type; vectors computed, see Reference/PROVENANCE.md.</summary>
public class Power_at_reference_air
{
    /// <summary>Half of the last digit printed.</summary>
    private const double LastDigit = 0.51e-5;

    public static TheoryData<double, double, double, double[]> Rows
    {
        get
        {
            var rows = new TheoryData<double, double, double, double[]>();
            foreach (var row in ReferenceTable.Rows("power_correction_vectors.csv").Select(ReferenceTable.Numbers))
                rows.Add(row[0], row[1], row[2], row[3..]);
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Every_row_of_the_reference_table_holds(double celsius, double pascals, double humidity, double[] expected)
    {
        var air = Air(celsius, pascals / 100, humidity);
        var sae = PowerCorrections.Of(air);
        var iso = PowerCorrections.Of(air, PowerCorrectionForm.Iso1585);
        Assert.Equal(expected[0], MoistAir.VapourPressure(air.Temperature!.Value, humidity).Pascals, 0.051);
        Assert.Equal(expected[1], MoistAir.DryPressure(air.Temperature!.Value, air.StationPressure!.Value, humidity).Pascals, 0.051);
        Assert.Equal(expected[2], sae.Factor.Value, LastDigit);
        Assert.Equal(expected[3], iso.Factor.Value, LastDigit);
        Assert.Equal(expected[4], Math.Pow(sae.Factor.Value, 0.38), LastDigit);
        Assert.Equal(expected[2] is >= 0.93 and <= 1.07, sae.InValidity);
        Assert.Equal(expected[3] is >= 0.93 and <= 1.07, iso.InValidity);
    }

    [Fact]
    public void The_reference_table_has_its_ten_rows_of_which_three_lie_outside_validity()
    {
        Assert.Equal(10, Rows.Count);
        Assert.Equal(3, ReferenceTable.Rows("power_correction_vectors.csv").Count(
            row => ReferenceTable.Numbers(row)[5] is < 0.93 or > 1.07));
    }

    [Fact]
    public void Reference_air_needs_no_correction_in_either_form()
    {
        Assert.Equal(1, PowerCorrections.Of(Air(25, 990, 0)).Factor.Value, 1e-12);
        Assert.Equal(1, PowerCorrections.Of(Air(25, 990, 0), PowerCorrectionForm.Iso1585).Factor.Value, 1e-12);
    }

    [Fact]
    public void The_two_forms_agree_within_a_fifth_of_a_per_cent_wherever_either_is_valid() =>
        Gen.Select(Gen.Double[0, 40], Gen.Double[930, 1045], Gen.Double[0, 1]).Sample((t, p, h) =>
        {
            var sae = PowerCorrections.Of(Air(t, p, h));
            var iso = PowerCorrections.Of(Air(t, p, h), PowerCorrectionForm.Iso1585);
            Assert.True(!sae.InValidity || Math.Abs(sae.Factor.Value - iso.Factor.Value) < 0.002);
        });

    [Fact]
    public void The_edges_of_validity_belong_to_it()
    {
        // Dry air at 25 deg C: CF = 1.18 x 990/p - 0.18.
        Assert.True(PowerCorrections.Of(Air(25, 1.18 * 990 / (1.07 + 0.18 - 1e-9), 0)).InValidity);
        Assert.False(PowerCorrections.Of(Air(25, 1.18 * 990 / (1.07 + 0.18 + 1e-9), 0)).InValidity);
        Assert.True(PowerCorrections.Of(Air(25, 1.18 * 990 / (0.93 + 0.18 + 1e-9), 0)).InValidity);
        Assert.False(PowerCorrections.Of(Air(25, 1.18 * 990 / (0.93 + 0.18 - 1e-9), 0)).InValidity);
    }

    /// <summary>Differences of the formula itself, a step of one doubt in each reading: no second derivation.</summary>
    [Theory]
    [InlineData(PowerCorrectionForm.SaeJ1349)]
    [InlineData(PowerCorrectionForm.Iso1585)]
    public void Its_doubt_is_that_of_the_three_readings_carried_through(PowerCorrectionForm form) =>
        Gen.Select(Gen.Double[-5, 40], Gen.Double[900, 1050], Gen.Double[0.1, 0.9]).Sample((t, p, h) =>
        {
            double CF(double dt, double dp, double dh) => PowerCorrections.Of(Air(t + dt, p + dp, h + dh), form).Factor.Value;
            double Half(double dt, double dp, double dh) => (CF(dt, dp, dh) - CF(-dt, -dp, -dh)) / 2;
            var expected = Math.Sqrt(
                Math.Pow(Half(1, 0, 0), 2) + Math.Pow(Half(0, 1, 0), 2) + Math.Pow(Half(0, 0, 0.05), 2));
            Assert.Equal(expected, PowerCorrections.Of(Air(t, p, h), form).Factor.StandardDeviation, 1e-3 * expected);
        });

    [Fact]
    public void Each_reading_that_is_missing_widens_the_doubt_and_the_pressure_at_a_known_height_does_so_by_eight_hectopascals()
    {
        var whole = PowerCorrections.Of(Air(15, 1013.25, 0.6)).Factor;
        var noPressure = PowerCorrections.Of(new AirState(Temperature.FromCelsius(15), null, 0.6) { Altitude = default(Length) }).Factor;
        var noTemperature = PowerCorrections.Of(new AirState(null, Pressure.FromHectopascals(1013.25), 0.6)).Factor;
        var noHumidity = PowerCorrections.Of(
            new AirState(Temperature.FromCelsius(15), Pressure.FromHectopascals(1013.25), null)).Factor;
        Assert.Equal(whole.Value, noPressure.Value, 1e-12);
        Assert.Equal(whole.Value, noTemperature.Value, 1e-12);
        Assert.Equal(whole.Value, noHumidity.Value, 1e-12);
        Assert.Equal(0.00312, whole.StandardDeviation, 0.00001); // by hand: (0.00274^2 + 0.00114^2 + 0.00097^2)^0.5
        Assert.Equal(0.0096, noPressure.StandardDeviation, 0.0001);
        Assert.True(noTemperature.StandardDeviation > 3 * whole.StandardDeviation);
        Assert.True(noHumidity.StandardDeviation > whole.StandardDeviation);
        Assert.True(PowerCorrections.Of(AirState.Unknown).Factor.StandardDeviation > noTemperature.StandardDeviation);
    }

    /// <summary>Common practice, no source: docks lie at the sea or above it, so the guess is low and wide.</summary>
    [Fact]
    public void Without_pressure_and_height_the_sea_is_not_taken_for_granted()
    {
        var guessed = AirAssumptions.Of(AirState.Unknown).Pascals;
        Assert.Equal(new Uncertain(100_000, 2_000), guessed);
        Assert.True(guessed.High(1) > 101_325, "a dock at the sea lies within one deviation");
        Assert.True(guessed.Low(2) <= StandardAtmosphere.PressureAt(Length.FromMetres(440)).Pascals * 1.0002, "and a lake at 440 m within two");
    }

    [Fact]
    public void A_known_altitude_stands_in_for_a_missing_pressure_and_never_for_one_that_was_read()
    {
        var lake = Length.FromMetres(500);
        var guessed = PowerCorrections.Of(new AirState(Temperature.FromCelsius(20), null, 0.5) { Altitude = lake });
        var read = PowerCorrections.Of(Air(20, 954.60835, 0.5));
        Assert.Equal(read.Factor.Value, guessed.Factor.Value, 1e-6);
        Assert.Equal(read, PowerCorrections.Of(Air(20, 954.60835, 0.5) with { Altitude = Length.FromMetres(2000) }));
    }

    [Fact]
    public void A_reading_that_cannot_be_is_refused_by_name_with_its_range()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(
            "StationPressure", () => PowerCorrections.Of(Air(20, 101.3, 0.5))); // kilopascals passed as hectopascals
        Assert.Contains("from 500 to 1100 hPa", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("Temperature", () => PowerCorrections.Of(Air(68, 1013, 0.5))); // deg F
        Assert.Throws<ArgumentOutOfRangeException>("RelativeHumidityFraction", () => PowerCorrections.Of(Air(20, 1013, 70)));
        Assert.Throws<ArgumentOutOfRangeException>(
            "Altitude", () => PowerCorrections.Of(AirState.Unknown with { Altitude = Length.FromMetres(9000) }));
        Assert.Throws<ArgumentOutOfRangeException>(
            "form", () => PowerCorrections.Of(AirState.Unknown, (PowerCorrectionForm)9));
    }

    private static AirState Air(double celsius, double hectopascals, double humidity) =>
        new(Temperature.FromCelsius(celsius), Pressure.FromHectopascals(hectopascals), humidity);
}
