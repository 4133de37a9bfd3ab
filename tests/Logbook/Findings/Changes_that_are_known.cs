using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Response;

namespace FleetWake.Logbook.Tests.Findings;

/// <summary>What a fleet's own record teaches of how its engines answer. The boats are invented, with a gain and an elasticity put in.</summary>
public class Changes_that_are_known
{
    private const double Gain = 0.55;
    private const double Elasticity = -0.9;

    // Air of tests/Propulsion/Reference/power_correction_vectors.csv: deg C, hPa, humidity [%], CF of SAE J1349.
    private static readonly (double Celsius, double Pressure, double Humidity, double Factor) s_cold = (15, 1013.25, 0, 0.95341);
    private static readonly (double Celsius, double Pressure, double Humidity, double Factor) s_warm = (30, 1013.25, 80, 1.02279);
    private static readonly (double Celsius, double Pressure, double Humidity, double Factor) s_hot = (35, 1005, 80, 1.05705);

    [Fact]
    public void Trials_of_one_stretch_are_paired_the_densest_air_with_the_thinnest()
    {
        var known = Known(Dock.OneBoat().With(
            Trial("2026-02-01T10:00", 100, s_hot), Trial("2026-03-01T10:00", 105, s_warm), Trial("2026-07-01T10:00", 110, s_cold), Trial("2026-07-11T10:00", 112, s_cold)));
        Assert.Equal("Four-stroke 50", known.Model);
        Assert.Equal([Math.Log(0.95341 / 1.05705), Math.Log(0.95341 / 1.02279)], known.Power.Select(p => p.LnPower.Value), (a, b) => Math.Abs(a - b) < 1e-4);
        Assert.All(known.Power, p => Assert.Equal(Gain * p.LnPower.Value, p.LnRpm.Value, 4e-4)); // whole RPM were read
    }

    [Fact]
    public void A_new_baseline_parts_the_pairs_and_like_air_makes_none()
    {
        Assert.Empty(Of(Dock.OneBoat().With(Trial("2026-02-01T10:00", 100, s_hot), Dock.Strike("2026-03-01T10:00"), Trial("2026-07-01T10:00", 110, s_cold))));
        Assert.Empty(Of(Dock.OneBoat().With(Trial("2026-02-01T10:00", 100, s_cold), Trial("2026-07-01T10:00", 110, s_cold))));
    }

    [Fact]
    public void A_prop_back_from_a_repitch_is_a_known_change_of_pitch()
    {
        var known = Known(Dock.OneBoat().With(
            Trial("2026-02-01T10:00", 100, s_warm),
            Dock.Removed("2026-02-10T10:00"),
            new RepitchProp(Dock.At("2026-02-12T10:00", "repitch"), "p1", 14),
            Dock.Mounted("2026-02-20T09:00"),
            Trial("2026-02-21T10:00", 104, s_warm, 5500 * Math.Pow(14 / 13.0, Elasticity))));
        var step = Assert.Single(known.Pitch);
        Assert.Equal(Math.Log(14 / 13.0), step.LnPitch.Value, 1e-12);
        Assert.Equal(Elasticity * step.LnPitch.Value, step.LnRpm.Value, 4e-4);
    }

    [Fact]
    public void A_prop_that_differs_in_more_than_its_pitch_teaches_nothing_of_pitch() =>
        Assert.Empty(Of(Dock.OneBoat().With(
            Dock.Prop("2026-02-01T08:00", "p2", 14) with { Material = "stainless" },
            Trial("2026-02-01T10:00", 100, s_warm),
            Dock.Removed("2026-02-10T10:00"),
            Dock.Mounted("2026-02-20T09:00", "p2"),
            Trial("2026-02-21T10:00", 104, s_warm, 5200))));

    [Fact]
    public void Enough_of_them_teach_the_gain_that_was_put_in()
    {
        var days = Enumerable.Range(0, 30).Select(i => new DateTime(2026, 1, 20, 10, 0, 0).AddDays(4 * i));
        var fleet = Dock.OneBoat().With([.. days.Select((d, i) => Trial($"{d:yyyy-MM-ddTHH:mm}", 100 + i, i % 2 == 0 ? s_hot : s_cold))]);
        var learned = GainLearning.Learn(Known(fleet).Power, []);
        Assert.Equal(Gain, learned.Gain.Value, 0.06);
        Assert.True(learned.Gain.StandardDeviation < 0.07); // the prior's is 0.10
    }

    private static RunTrial Trial(string time, double hours, (double Celsius, double Pressure, double Humidity, double Factor) air, double reference = 5500) =>
        Dock.Trial(time, Math.Round(reference * Math.Pow(air.Factor, -Gain)), hours) with
        {
            AirTemperatureCelsius = air.Celsius,
            PressureHectopascals = air.Pressure,
            HumidityPercent = air.Humidity,
        };

    private static KnownChanges Known(Fleet fleet) => Assert.Single(Of(fleet));

    private static List<KnownChanges> Of(Fleet fleet) => [.. KnownChanges.Of(fleet.History())];
}
