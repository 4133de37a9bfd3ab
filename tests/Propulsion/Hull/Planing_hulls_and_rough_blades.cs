using System.Globalization;
using CsCheck;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.Hull;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Tests.Balance;
using static FleetWake.Propulsion.Tests.OpenWater.SeriesTables;

namespace FleetWake.Propulsion.Tests.Hull;

public class Planing_hulls_and_rough_blades
{
    private static readonly Density s_sea = Density.FromKilogramsPerCubicMetre(1025);

    /// <summary>An invented centre console of seven metres.</summary>
    private static readonly PlaningHull s_hull = new()
    {
        Mass = Mass.FromKilograms(1800),
        Beam = Length.FromMetres(2.1),
        DeadriseDegrees = 20,
        GravityForward = Length.FromMetres(2.4),
        GravityAbove = Length.FromMetres(0.7),
    };

    public static TheoryData<string[]> Roughness => [.. QuotedTable.Rows("roughness_effects.csv")];

    /// <summary>Computed by another program from the same formula and the full balance over the Gawn series; no published table.</summary>
    [Theory]
    [MemberData(nameof(Roughness))]
    public void A_rough_blade_costs_rate_and_speed_as_tabled(string[] row)
    {
        var balance = new WotBalance(OpenWaterSeries.Gawn, InventedBoats.Boat(row[0], OpenWaterSeries.Gawn, InventedBoats.Cubic));
        var boat = balance.Baseline;
        var chord = Length.FromMetres(boat.Shape.ChordRatio * boat.Diameter.Metres);
        var k_p = Length.FromMillimetres(Number(row[2]) / 1000);
        Assert.Equal(Number(row[1]), chord.Millimetres, 0.06);
        Assert.Equal(Number(row[3]), BladeRoughness.SectionDragCoefficient(chord, 0.06, k_p), 6e-6);
        var change = BladeRoughness.Change(chord, 0.06, k_p);
        Assert.Equal(double.Parse(row[4], CultureInfo.InvariantCulture), change, 6e-6);

        var point = balance.Solve(new BoatState { SectionDragChange = change });
        Assert.Equal(Number(row[5]), point.Rate.RevolutionsPerMinute - 5500, 0.6);
        Assert.Equal(Number(row[7]), 100 * ((point.Speed.Knots / boat.Speed.Knots) - 1), 0.006);
    }

    [Fact]
    public void The_table_of_roughness_is_whole() => Assert.Equal(24, Roughness.Count);

    [Theory]
    [InlineData(0, 0.06, 0.03, "chord")]
    [InlineData(0.1, -0.1, 0.03, "thicknessRatio")]
    [InlineData(0.1, 0.06, 0, "roughness")]
    [InlineData(0.1, 0.06, 5, "roughness")]
    [InlineData(0.1, double.NaN, 0.03, "thicknessRatio")]
    public void A_blade_that_cannot_be_is_refused(double metres, double thickness, double millimetres, string name) => Assert.Equal(
        name,
        Assert.Throws<ArgumentOutOfRangeException>(() => BladeRoughness.SectionDragCoefficient(
            Length.FromMetres(metres), thickness, Length.FromMillimetres(millimetres))).ParamName);

    /// <summary>
    /// 0.242/sqrt(C_f) = log10(R_n C_f): at 1e7 about 2.93e-3, at 1e9 about 1.53e-3 (from memory of the usual tables); exact by
    /// putting it back.
    /// </summary>
    [Theory]
    [InlineData(1e6, 4.41e-3)]
    [InlineData(1e7, 2.93e-3)]
    [InlineData(1e9, 1.53e-3)]
    public void Friction_follows_Schoenherr(double R_n, double about)
    {
        var C_f = Friction.Schoenherr(R_n);
        Assert.Equal(Math.Log10(R_n * C_f), 0.242 / Math.Sqrt(C_f), 1e-12);
        Assert.Equal(about, C_f, 0.02e-3);
    }

    /// <summary>Computed for invented boats: 1.06 to 1.33 with air drag, and 0.27 to 0.39 of the weight; no published values.</summary>
    [Fact]
    public void On_plane_resistance_grows_little_faster_than_speed_and_slower_than_weight()
    {
        var at = Speed.FromKnots(33);
        var light = HullResistance.Planing(s_hull, at, s_sea)!.Value;
        Assert.InRange(light.Exponent, 0.8, 1.6);
        var heavy = HullResistance.Planing(s_hull with { Mass = Mass.FromKilograms(1980) }, at, s_sea)!.Value;
        Assert.InRange(Math.Log(heavy.Reference.Newtons / light.Reference.Newtons) / Math.Log(1.1), 0.1, 0.9);
    }

    [Fact]
    public void The_power_law_is_Savitsky_within_a_per_cent_for_a_tenth_of_the_speed()
    {
        var law = HullResistance.Planing(s_hull, Speed.FromKnots(33), s_sea)!.Value;
        foreach (var knots in new[] { 30.0, 33.0, 36.0 })
        {
            var drag = Savitsky.Equilibrium(s_hull, Speed.FromKnots(knots), s_sea)!.Value.Drag.Newtons;
            Assert.Equal(1, law.Of(Speed.FromKnots(knots)).Newtons / drag, 0.01);
        }
    }

    [Fact]
    public void A_hull_outside_the_limits_of_the_method_is_marked() =>
        Assert.False(Savitsky.AtTrim(s_hull, Speed.FromKnots(33), s_sea, 1.5).InRange);

    [Fact]
    public void A_centre_of_gravity_ahead_of_all_pressure_has_no_trim_of_equilibrium() =>
        Assert.Null(Savitsky.Equilibrium(s_hull with { GravityForward = Length.FromMetres(60) }, Speed.FromKnots(33), s_sea));

    [Fact]
    public void Any_hull_at_any_speed_has_a_drag_or_does_not_plane_or_is_refused() => Gen.Select(
        Gen.Double[50, 20_000], Gen.Double[0.5, 6], Gen.Double[0, 35], Gen.Double[0.2, 12], Gen.Double[0.5, 70]).Sample(
        (kilograms, beam, deadrise, forward, knots) =>
        {
            var hull = s_hull with
            {
                Mass = Mass.FromKilograms(kilograms),
                Beam = Length.FromMetres(beam),
                DeadriseDegrees = deadrise,
                GravityForward = Length.FromMetres(forward),
            };
            try
            {
                if (Savitsky.Equilibrium(hull, Speed.FromKnots(knots), s_sea) is { } state)
                    Assert.True(state.Drag.Newtons > 0 && double.IsFinite(state.WettedRatio));
            }
            catch (ArgumentOutOfRangeException refusal)
            {
                Assert.Equal("speed", refusal.ParamName);
            }
        });

    [Fact]
    public void What_cannot_be_is_refused_by_name()
    {
        Assert.Equal("Mass", Refused(s_hull with { Mass = default }, 33));
        Assert.Equal("Beam", Refused(s_hull with { Beam = default }, 33));
        Assert.Equal("GravityForward", Refused(s_hull with { GravityForward = default }, 33));
        Assert.Equal("DeadriseDegrees", Refused(s_hull with { DeadriseDegrees = double.NaN }, 33));
        Assert.Equal("ThrustAngleDegrees", Refused(s_hull with { ThrustAngleDegrees = 90 }, 33));
        Assert.Equal("speed", Refused(s_hull, 0));
        Assert.Equal("speed", Refused(s_hull, 2)); // no planing surface carries it
        Assert.Equal("referenceSpeed", Assert.Throws<ArgumentOutOfRangeException>(() =>
            new HullResistance(Force.FromNewtons(1), default, 1)).ParamName);
    }

    private static string? Refused(PlaningHull hull, double knots) => Assert.Throws<ArgumentOutOfRangeException>(() =>
        Savitsky.Equilibrium(hull, Speed.FromKnots(knots), s_sea)).ParamName;
}
