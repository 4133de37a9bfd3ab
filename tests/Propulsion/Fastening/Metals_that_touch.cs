using System.Globalization;
using FleetWake.Propulsion.Fastening;

namespace FleetWake.Propulsion.Tests.Fastening;

/// <summary>Galvanic series in flowing sea water, see Reference/PROVENANCE.md.</summary>
public class Metals_that_touch
{
    private static readonly Dictionary<GalvanicMaterial, (double Low, double High)> s_series =
        ReferenceTable.Rows("galvanic_series.csv").ToDictionary(
            row => Enum.Parse<GalvanicMaterial>(row[0]),
            row => (double.Parse(row[1], CultureInfo.InvariantCulture), double.Parse(row[2], CultureInfo.InvariantCulture)));

    [Fact]
    public void Every_pair_of_the_series_has_the_least_and_the_largest_difference_of_its_table()
    {
        Assert.Equal(Enum.GetValues<GalvanicMaterial>().Length, s_series.Count);
        foreach (var (one, a) in s_series)
            foreach (var (other, b) in s_series.Where(metal => metal.Key != one))
            {
                var pair = GalvanicPair.Of(one, other);
                Assert.Equal(Math.Max(0, Math.Max(b.Low - a.High, a.Low - b.High)), pair.LowVolts, 1e-12);
                Assert.Equal(Math.Max(b.High - a.Low, a.High - b.Low), pair.HighVolts, 1e-12);
                Assert.Equal(GalvanicPair.Of(other, one), pair);
            }
    }

    /// <summary>0.66 to 1.0 V; the lower unit is eaten, so its anode is to be looked at.</summary>
    [Fact]
    public void A_stainless_prop_eats_an_aluminium_lower_unit()
    {
        var pair = GalvanicPair.Of(GalvanicMaterial.Stainless316Passive, GalvanicMaterial.Aluminium);
        Assert.Equal(GalvanicMaterial.Aluminium, pair.Eaten);
        Assert.Equal(0.66, pair.LowVolts, 1e-12);
        Assert.Equal(1.00, pair.HighVolts, 1e-12);
        Assert.True(pair.RemindOfAnode);
    }

    [Fact]
    public void A_magnesium_anode_is_eaten_before_the_lower_unit() => Assert.Equal(
        GalvanicMaterial.Magnesium, GalvanicPair.Of(GalvanicMaterial.Aluminium, GalvanicMaterial.Magnesium).Eaten);

    [Fact]
    public void Where_two_ranges_overlap_either_may_be_eaten()
    {
        var pair = GalvanicPair.Of(GalvanicMaterial.Zinc, GalvanicMaterial.Aluminium); // -1.03..-0.98 and -1.00..-0.76
        Assert.Null(pair.Eaten);
        Assert.Equal(0, pair.LowVolts);
        Assert.Equal(0.27, pair.HighVolts, 1e-12);
    }

    [Fact]
    public void Like_on_like_and_near_neighbours_call_for_no_anode()
    {
        Assert.Equal(new GalvanicPair(null, 0, 0), GalvanicPair.Of(GalvanicMaterial.Aluminium, GalvanicMaterial.Aluminium));
        Assert.False(GalvanicPair.Of(GalvanicMaterial.Stainless304Passive, GalvanicMaterial.Stainless316Passive).RemindOfAnode);
    }

    [Fact]
    public void A_metal_not_in_the_series_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(
        "other", () => GalvanicPair.Of(GalvanicMaterial.Zinc, (GalvanicMaterial)42));
}
