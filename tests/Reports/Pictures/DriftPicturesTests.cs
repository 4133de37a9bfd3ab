using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Statistics;

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
            "Gannet: last read 5890 RPM, 5881 by its trials together, 110 below the top of its rated band 5000 to 6000; drift +192 RPM per 100 h (+175 to +209 at 80\u00A0%); "
            + "reaches the top about 57 h after the last trial (53 to 63 h at 80\u00A0%), by its use about 2027-02-10 (2027-02-03 to 2027-02-18); "
            + "drift alarm since the trial of 2026-11-02 (0.04 false alarms a boat-year on this fleet's trials); 7 trials counted. "
            + "Line and drift are of RPM as read, not brought to reference air: weather is part of the scatter.",
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
        Assert.Contains("last read 6030 RPM, 30 above the top of its rated band 5000 to 6000, while its trials together say 5990: not settled", picture.Statement, StringComparison.Ordinal);
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
        Assert.Equal(["fitted", "strike, bent + repitched to 14 in", "strike, no mark", "strike, no mark"], marks.Select(m => m.Label));
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
    public void Trials_that_say_next_to_nothing_have_a_picture_without_a_line_and_the_figure_is_called_the_fleets()
    {
        var picture = Picture(SkerryBay.NewBoat());
        Assert.Null(picture.Line);
        Assert.Null(picture.Exit);
        Assert.Contains(
            "; mostly what its fleet makes likely, +8 RPM per 100 h (-1 to +18 at 80\u00A0%): its own trials say next to nothing yet; no date of leaving its band: its own trials say next to nothing of a drift; ",
            picture.Statement,
            StringComparison.Ordinal);
        Assert.Equal("its own trials say next to nothing of a drift: no line, no date", picture.Outlook);
    }

    [Fact]
    public void A_reading_that_may_be_wrong_stays_with_its_chance_and_is_named_where_it_is_likely()
    {
        var picture = Picture(SkerryBay.RepitchedBoat());
        Assert.Equal([null, 0.27, null, null, null, 0.92, null], picture.Points.Select(p => p.WrongChance));
        Assert.Contains("; 1 of 7 trials is out of line with the others: 2026-11-02.", picture.Statement, StringComparison.Ordinal);
        Assert.DoesNotContain("out of line", Picture(SkerryBay.WornSkiff()).Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_strike_did_stands_at_its_mark_and_in_the_sentence()
    {
        var picture = Picture(SkerryBay.StruckBoat());
        Assert.Equal([null, "+112 RPM (71 to 153)"], picture.Marks.Select(m => m.Effect));
        Assert.Contains("; strike of 2026-10-02 cost +112 RPM (71 to 153); ", picture.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_what_happened_between_the_same_two_trials_only_the_sum_is_told()
    {
        var picture = Picture(SkerryBay.RepitchedBoat());
        Assert.Equal("-428 RPM (-474 to -382) together", picture.Marks[1].Effect);
        Assert.Contains("; strike, bent + repitched to 14 in of 2026-10-13: -428 RPM (-474 to -382); ", picture.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void A_step_that_trials_cannot_tell_from_none_is_not_given_as_a_cost()
    {
        var position = SkerryBay.StruckBoat().Positions[0];
        var step = position.Mounting!.Steps[0] with { Rpm = new Estimate(12, 41, -40, 64, 0.8) };
        Assert.Equal("strike of 2026-10-02: no change of RPM that the trials can tell (-40 to +64)", StepWords.Clause(position.Mounting, step));
    }

    [Fact]
    public void The_day_of_leaving_the_band_stands_under_the_hours_and_the_alarm_at_its_trial()
    {
        var picture = Picture(SkerryBay.WornSkiff());
        Assert.Equal("reaches the top about 2027-02-10, 80\u00A0%: 2027-02-03 to 2027-02-18", picture.Outlook);
        Assert.Equal(212 + (5 * 21), picture.AlarmHours);
        Assert.Null(Picture(SkerryBay.StruckBoat()).AlarmHours);
    }

    [Theory]
    [InlineData(BandExitState.BeyondHorizon, "leaves its band beyond the horizon of 2000 engine hours, if ever")]
    [InlineData(BandExitState.AlreadyOutside, "already outside its band")]
    public void No_date_is_said_plainly(BandExitState state, string words)
    {
        Assert.Equal(words, Phrases.Exit(new BandExit(state)));
        Assert.Equal(words, Phrases.Outlook(new BandExit(state)));
    }

    [Fact]
    public void An_end_beyond_the_horizon_is_no_date()
    {
        var exit = SkerryBay.WornSkiff().Positions[0].Mounting!.Exit;
        var open = exit with { LatestHours = null, Dates = exit.Dates! with { Latest = null } };
        Assert.EndsWith("(53 to beyond the horizon at 80\u00A0%), by its use about 2027-02-10 (2027-02-03 to beyond the horizon)", Phrases.Exit(open), StringComparison.Ordinal);
        Assert.EndsWith(", by its use hardly before 2027-02-03", Phrases.Exit(open with { Dates = open.Dates with { On = null } }), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_position_of_a_twin_has_its_own_picture()
    {
        Assert.StartsWith("Great Skua, port: prop P-31", Picture(SkerryBay.Twin(), 0).Title, StringComparison.Ordinal);
        Assert.StartsWith("Great Skua, starboard: prop P-32", Picture(SkerryBay.Twin(), 1).Title, StringComparison.Ordinal);
    }
}
