using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Tests.Pictures;

public class DriftPicturesTests
{
    private static DriftPicture Picture(BoatFinding boat, int position = 0) => DriftPictures.Of(boat, boat.Positions[position])!;

    [Fact]
    public void A_reading_over_the_band_stays_in_the_picture_beside_what_it_comes_to_at_reference_air()
    {
        var finding = SkerryBay.ReadOver(); // the last of its trials read 6030, the top is 6000
        var position = finding.Positions.Single();
        var mounting = position.Mounting!;
        var brought = position with
        {
            Mounting = mounting with { AtReference = true, Trials = [.. mounting.Trials.Select(t => t with { Reference = new AtReference(0.985 * t.Rpm, 40, null, 0.961) })] },
        };
        var picture = DriftPictures.Of(finding, brought)!;
        Assert.True(picture.AtReference);
        Assert.Equal(6030, picture.Points.Single(p => p.Kind == PointKind.AtHelm).Rpm);
        Assert.Equal(0.985 * 6030, picture.Points.Last(p => p.Kind == PointKind.Counted).Rpm, 1e-9);
        Assert.EndsWith("Line and drift are of RPM at reference air.", picture.Statement, StringComparison.Ordinal);
        Assert.True(picture.Window.ToRpm > 6030);
        Assert.NotEmpty(new PngRenderer().Render(picture));
        Assert.DoesNotContain(DriftPictures.Of(finding, position)!.Points, p => p.Kind == PointKind.AtHelm);
    }

    [Fact]
    public void A_position_without_a_trial_has_no_picture()
    {
        var untried = SkerryBay.Untried();
        Assert.Null(DriftPictures.Of(untried, untried.Positions[0]));
        var bare = SkerryBay.Bare();
        Assert.Null(DriftPictures.Of(bare, bare.Positions[0]));
    }

    [Fact]
    public void The_alternative_text_states_the_finding_with_its_numbers()
    {
        Assert.Equal(
            "Gannet: last read 5890 RPM, 5881 by its line, 110 below the top of its rated band 5000 to 6000; drift +192 RPM per 100 h (+175 to +209 at 80\u00A0%); "
            + "reaches the top about 62 h after the last trial (57 to 68 h at 80\u00A0%); 7 trials counted. Line and drift are of RPM as read, not brought to reference air: weather is part of the scatter.",
            Picture(SkerryBay.WornSkiff()).Statement);
    }

    [Fact]
    public void A_reading_at_reference_conditions_stands_beside_the_one_that_the_helm_read_over_the_top()
    {
        var over = SkerryBay.ReadOver().Positions[0];
        var mounting = over.Mounting!;
        var both = Standings.Of(over with { Mounting = mounting with { Band = mounting.Band with { ReferenceRpm = 5900 } } });
        Assert.Contains("last read 6030 RPM, 30 above the top of its rated band 5000 to 6000 (5900 at reference air)", both.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_that_reads_low_is_told_beside_what_the_engine_turned()
    {
        var over = SkerryBay.ReadOver().Positions[0];
        var mounting = over.Mounting!;
        var checkedGauge = Standings.Of(over with { Mounting = mounting with { Band = mounting.Band with { GaugeRpm = 5850 } } });
        Assert.StartsWith("last turned 6030 RPM (its gauge showed 5850), 30 above the top", checkedGauge.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_over_the_top_is_never_called_inside_though_the_line_is()
    {
        var picture = Picture(SkerryBay.ReadOver());
        Assert.Contains("last read 6030 RPM, 30 above the top of its rated band 5000 to 6000, while its line says 5990: not settled", picture.Statement, StringComparison.Ordinal);
        var standing = Standings.Of(SkerryBay.ReadOver().Positions[0]);
        Assert.True(standing.Outside);
        Assert.Equal("read above the top", standing.Word);
        Assert.Equal(-30, standing.MarginRpm);
    }

    [Fact]
    public void Trials_before_a_strike_are_shown_as_an_earlier_stretch()
    {
        var kinds = Picture(SkerryBay.StruckBoat()).Points.Select(p => p.Kind).ToList();
        Assert.Equal(Enumerable.Repeat(PointKind.EarlierStretch, 3).Concat(Enumerable.Repeat(PointKind.Counted, 3)), kinds);
    }

    [Fact]
    public void Marks_at_the_same_hour_share_one_line_named_for_the_gravest()
    {
        var marks = Picture(SkerryBay.RepitchedBoat()).Marks;
        Assert.Equal(["fitted", "strike: wood + repitch 13 to 14 in", "strike: line", "strike: sand"], marks.Select(m => m.Label));
        Assert.Equal(HistoryMarkKind.Strike, marks[1].Kind);
    }

    [Fact]
    public void A_part_throttle_reading_does_not_flatten_the_picture_and_a_limiter_reading_is_a_lower_bound()
    {
        var picture = Picture(SkerryBay.SetAsideBoat());
        Assert.True(picture.Window.FromRpm > 3400);
        Assert.Equal(
            [PointKind.Counted, PointKind.SetAside, PointKind.Counted, PointKind.AtLeast, PointKind.Counted], picture.Points.Select(p => p.Kind));
        Assert.Equal(1, picture.WithoutHours);
    }

    [Fact]
    public void A_forecast_takes_no_more_room_than_what_was_measured()
    {
        var picture = Picture(SkerryBay.Twin());
        var seen = picture.Points.Max(p => p.Hours) - 492;
        Assert.True(picture.Window.ToHours - picture.Points.Max(p => p.Hours) <= 1.1 * seen);
        Assert.All(picture.Line!.Points, p => Assert.True(p.Hours <= picture.Window.ToHours));
    }

    [Fact]
    public void Few_trials_have_a_picture_without_a_line_and_say_so()
    {
        var picture = Picture(SkerryBay.NewBoat());
        Assert.Null(picture.Line);
        Assert.Contains("no drift stated; fewer than three usable trials, so no forecast", picture.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_position_of_a_twin_has_its_own_picture()
    {
        Assert.StartsWith("Great Skua, port: prop P-31", Picture(SkerryBay.Twin(), 0).Title, StringComparison.Ordinal);
        Assert.StartsWith("Great Skua, starboard: prop P-32", Picture(SkerryBay.Twin(), 1).Title, StringComparison.Ordinal);
    }
}
