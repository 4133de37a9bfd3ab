using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Reports.Pictures.Figures;
using FleetWake.Reports.Pictures.Fleet;

namespace FleetWake.Reports.Tests.Pictures;

public class FleetPicturesTests
{
    [Fact]
    public void The_strip_counts_every_engine_once_and_names_who_is_outside()
    {
        var strip = FleetStrip.Of(SkerryBay.Fleet(), SkerryBay.Hire)!;
        var engines = SkerryBay.Fleet().SelectMany(f => f.Positions).Count(p => p.Engine is not null);
        Assert.Equal(engines, strip.Marks.Count + strip.NotKnown);
        Assert.Equal("Skerry Bay Hire: every engine in its rated band", strip.Title);
        Assert.Contains("above the top (Dunlin by 30", strip.Statement, StringComparison.Ordinal);
        Assert.Contains("below the bottom (Fulmar by 70)", strip.Statement, StringComparison.Ordinal);
        Assert.Contains("likely to leave it within 100 engine hours (Gannet", strip.Statement, StringComparison.Ordinal);
        Assert.All(strip.Marks, m => Assert.Equal(m.State is StripState.Above or StripState.Below, m.Place is > 1 or < 0 || m.BeyondRpm >= 0));
    }

    [Fact]
    public void A_fleet_that_is_well_says_so()
    {
        Assert.Equal("All 2 engines that were tried run inside their rated band.", FleetStrip.Of([SkerryBay.Quiet(), SkerryBay.Quiet("Turnstone")], "x")!.Statement);
        Assert.Null(FleetStrip.Of([SkerryBay.Untried(), SkerryBay.Bare(), SkerryBay.Unregistered()], "x"));
    }

    [Fact]
    public void Boats_that_are_laid_up_or_gone_are_not_on_the_strip()
    {
        var laidUp = SkerryBay.Quiet("Turnstone") with { LayUp = new LayUpCard(SkerryBay.Monday, null, null, []) };
        var strip = FleetStrip.Of([SkerryBay.Quiet(), laidUp], "x")!;
        Assert.Single(strip.Marks);
        Assert.EndsWith("1 boat laid up is not shown.", strip.Statement, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Gannet", SlipRegion.PropLetsGo)]
    [InlineData("Smew", SlipRegion.LessToPush)]
    [InlineData("Fulmar", SlipRegion.MoreToPush)]
    [InlineData("Tystie", SlipRegion.LessPower)]
    public void A_prop_that_moved_lies_in_the_part_of_its_group(string boat, SlipRegion region)
    {
        var mark = SlipMap.Of(SamplePictures.Slipped(), "x")!.Marks.Single(m => m.Name == boat);
        Assert.True(mark.Sure);
        Assert.Equal(region, SlipMap.RegionOf(mark.RpmPercent, mark.SlipPoints));
    }

    [Fact]
    public void What_lies_within_the_doubt_of_its_readings_is_not_named()
    {
        var map = SlipMap.Of(SamplePictures.Slipped(), "x")!;
        Assert.DoesNotContain("Dunlin", map.Statement, StringComparison.Ordinal);
        Assert.Contains("5 others have not moved beyond the doubt of the readings", map.Statement, StringComparison.Ordinal);
        Assert.Contains("That does not mean sound", SlipMap.Of([SamplePictures.Moved("Knot", 0.2, 0.1)], "x")!.Statement, StringComparison.Ordinal);
    }

    // The regions against the program's own balance of prop, hull and engine; there is no published map of them.
    [Theory]
    [InlineData(Cause.PitchOrCupLoss, SlipRegion.PropLetsGo)]
    [InlineData(Cause.DiameterLoss, SlipRegion.PropLetsGo)]
    [InlineData(Cause.HubSlip, SlipRegion.PropLetsGo)]
    [InlineData(Cause.Ventilation, SlipRegion.PropLetsGo)]
    [InlineData(Cause.LighterLoad, SlipRegion.LessToPush)]
    [InlineData(Cause.HullOrLoad, SlipRegion.MoreToPush)]
    [InlineData(Cause.EnginePower, SlipRegion.LessPower)]
    [InlineData(Cause.BladeRoughness, SlipRegion.LessPower)]
    public void A_cause_ends_up_in_its_part_of_the_map_by_nearly_every_model_of_the_boat(Cause cause, SlipRegion region)
    {
        const double Slip = 0.12; // of a planing boat; common practice, no source
        var shape = new BladeShape(3, 0.55, 13 / 11.5);
        var models = ResponseModels.About(shape, (1 - Slip) * 13 / 11.5, new Uncertain(0.42, 0.1));
        var there = models.Where(m =>
        {
            var r = CauseResponse.Of(cause, m);
            var step = 3 / Math.Abs(100 * r.LnRpm); // as large as moves RPM by 3 %
            return SlipMap.RegionOf(100 * r.LnRpm * step, 100 * (1 - Slip) * (r.LnRpm - r.LnSpeed) * step) == region;
        }).Sum(m => m.Weight);
        Assert.True(there / models.Sum(m => m.Weight) > 0.95, $"{cause}: {100 * there / models.Sum(m => m.Weight):0} % of the models lie in {region}");
    }

    [Fact]
    public void Panels_share_their_scales_and_show_the_smallest_margins_first()
    {
        var panels = DriftPanels.Of(SamplePictures.Class(14)).Single();
        Assert.Equal(DriftPanels.MostPanels, panels.Panels.Count);
        Assert.Equal(2, panels.LeftOut);
        Assert.Equal("Ibis", panels.Panels[0].Name); // below the bottom
        Assert.All(panels.Panels, p => Assert.All(p.Points, t => Assert.InRange(t.Hours, 0, panels.Window.ToHours)));
        Assert.Contains("1 below the bottom (Ibis)", panels.Statement, StringComparison.Ordinal);
        Assert.Empty(DriftPanels.Of([SkerryBay.Quiet()])); // nothing to stand beside
    }

    [Fact]
    public void Life_curves_are_those_of_the_fleets_figures()
    {
        var curves = SamplePictures.Lives();
        Assert.Equal(["stainless", "aluminium", "composite"], curves.Curves.Select(c => c.Group));
        Assert.All(curves.Curves, c => Assert.True(c.Steps.Zip(c.Steps.Skip(1)).All(p => p.Second.Alive <= p.First.Alive && p.Second.Hours >= p.First.Hours)));
        Assert.All(curves.Curves, c => Assert.All(c.Steps, s => Assert.True(s.Low <= s.Alive && s.Alive <= s.High)));
        Assert.Null(LifeCurves.Of(SamplePictures.SomeLives(2), _ => "few", "by nothing", LifeQuestion.Worn));
    }

    [Fact]
    public void A_dock_stands_out_when_the_fleets_rate_lies_outside_its_limits()
    {
        var picture = SamplePictures.Strikes();
        Assert.Equal(["North slip"], picture.Rows.Where(r => r.Stands).Select(r => r.Name));
        Assert.Contains("more at North slip 7.4 (5.7 to 9.4); fewer at Ferry stage 0.6", picture.Statement, StringComparison.Ordinal); // 31 in 4,200 h, 3 in 4,900 h; limits of Garwood
        Assert.Contains("no dock stands out", StrikeRatePicture.Of(SamplePictures.Rates([("a", 3, 1000), ("b", 4, 1100)]))!.Statement, StringComparison.Ordinal);
        Assert.InRange(picture.To, picture.Rows.Max(r => r.Value!.Value), 25);
    }

    [Fact]
    public void Calibration_stands_out_when_the_claim_lies_outside_the_limits()
    {
        var picture = CalibrationPicture.Of([SamplePictures.Calibration(new DateOnly(2026, 10, 31), 40, 20, 0, 0, 0)])!;
        Assert.True(picture.Rows.Single().Stands); // 20 of 40: 34 to 66 % (Clopper and Pearson), 80 % claimed
        Assert.Contains("fewer than the 80 % claimed", picture.Statement, StringComparison.Ordinal);
        Assert.Null(CalibrationPicture.Of([SamplePictures.Calibration(new DateOnly(2026, 10, 31), 0, 0, 0, 0, 0)]));
    }
}
