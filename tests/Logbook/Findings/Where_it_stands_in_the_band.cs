using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Findings;

public class Where_it_stands_in_the_band
{
    [Theory]
    [InlineData(5400, BandState.InBand, 400, BandEdge.Bottom)]
    [InlineData(5700, BandState.InBand, 300, BandEdge.Top)]
    [InlineData(6000, BandState.InBand, 0, BandEdge.Top)]
    [InlineData(6000.5, BandState.AboveTop, -0.5, BandEdge.Top)]
    [InlineData(5000, BandState.InBand, 0, BandEdge.Bottom)]
    [InlineData(4990, BandState.BelowBottom, -10, BandEdge.Bottom)]
    public void One_trial_stands_where_it_reads(double rpm, BandState state, double margin, BandEdge edge) =>
        Assert.Equal(new BandStanding(state, rpm, rpm, margin, edge), Trialled.Boat((100, rpm)).Mounting().Band);

    [Fact]
    public void The_last_reading_over_the_top_is_outside_though_the_level_is_inside()
    {
        var mounting = Trialled.Boat((100, 5900), (200, 5900), (300, 5900), (400, 6010)).Mounting();
        Assert.True(mounting.LevelRpm!.Value < 6000);
        Assert.Equal(new BandStanding(BandState.AboveTop, 6010, 6010, -10, BandEdge.Top), mounting.Band);
    }

    [Fact]
    public void The_level_over_the_top_is_outside_though_the_last_reading_is_inside()
    {
        var mounting = Trialled.Boat((100, 5900), (200, 5960), (300, 6020), (350, 6040), (400, 6060), (410, 5990)).Mounting();
        Assert.Equal((BandState.AboveTop, 5990, mounting.LevelRpm!.Value), (mounting.Band.State, mounting.Band.ObservedRpm, mounting.Band.PresentRpm));
        Assert.Equal(6000 - mounting.LevelRpm.Value, mounting.Band.MarginRpm);
    }

    [Theory]
    [InlineData(5560, 5540, 5640)]
    [InlineData(5560, 5600, 5550)]
    public void Inside_by_both_it_stands_by_the_less_favourable(double second, double third, double last)
    {
        var mounting = Trialled.Boat((100, 5500), (200, second), (300, third), (400, last)).Mounting();
        Assert.Equal(Math.Max(last, mounting.LevelRpm!.Value), mounting.Band.PresentRpm!.Value); // the top is nearer
        Assert.NotEqual(last, mounting.LevelRpm.Value, 3.0);
    }

    /// <summary>A gauge misread by 400 RPM: believed until another trial, and said to be likely wrong.</summary>
    [Fact]
    public void A_reading_that_is_likely_wrong_stands_and_is_said_to_be_so()
    {
        var boat = Trialled.Boat((100, 5600), (150, 5610), (200, 5590), (250, 5605), (300, 5610), (350, 6050));
        Assert.Equal(BandState.AboveTop, boat.Mounting().Band.State);
        Assert.True(boat.Mounting().Trials[^1].GrossChance > 0.9);
        Assert.Contains("out of line with its other trials (over 99 % likely): it was misread, or something gave way since. Look at blades and hub first, then run it again. May be:", Attentions.Of(boat.Finding()).Single(a => a.Kind == AttentionKind.OutsideBand).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(6200, -200)]
    [InlineData(5900, 0)]
    public void A_reading_that_the_limiter_held_is_over_the_top_already(double rpm, double margin)
    {
        var held = Trialled.Boat((100, 5700)).With(Dock.Trial(Trialled.Day(1), rpm, 150, limiter: true)).Mounting();
        Assert.Equal(new BandStanding(BandState.AboveTop, rpm, rpm, margin, BandEdge.Top), held.Band);
        Assert.Equal(BandExitState.AlreadyOutside, held.Exit.State);
    }

    [Fact]
    public void A_later_trial_without_the_limiter_brings_it_back() =>
        Assert.Equal(BandState.InBand, Trialled.Boat((100, 5700), (200, 5700)).With(Dock.Trial(Trialled.Day(0.5), 6200, 150, limiter: true)).Mounting().Band.State);

    [Fact]
    public void Causes_belong_to_what_is_outside_and_never_to_what_is_inside()
    {
        Assert.Empty(Trialled.Boat((100, 5500)).Mounting().Causes);
        Assert.Contains("lost cup or pitch", Trialled.Boat((100, 6100)).Mounting().Causes);
        Assert.Contains("a full load", Trialled.Boat((100, 4900)).Mounting().Causes);
        Assert.DoesNotContain("a light load", Trialled.Boat((100, 4900)).Mounting().Causes);
    }

    [Fact]
    public void A_leap_of_slip_points_to_the_hub_first()
    {
        var trials = new[] { 22.5, 22.5, 18.0 }.Select((knots, i) => (ICommand)Dock.Trial(Trialled.Day(i), 5900 + (100 * i), 100 + (50 * i), knots));
        Assert.Equal("hub slip", Dock.OneBoat().With(trials).Mounting().Causes[0]);
    }

    /// <summary>A hub that let go inside the band: the estimate sets the reading aside, and somebody has to look.</summary>
    [Fact]
    public void A_reading_out_of_line_inside_the_band_is_brought_up()
    {
        var told = Attentions.Of(Trialled.Boat((100, 5500), (150, 5510), (200, 5490), (250, 5505), (300, 5510), (350, 5900)).Finding());
        Assert.Contains("Its last trial turned 5900 RPM, inside its band. That reading is out of line", Assert.Single(told, a => a.Kind == AttentionKind.OutOfLine).Sentence, StringComparison.Ordinal);
    }

    /// <summary>Five trials, a strike, one trial: what strikes usually do must not carry it over the top.</summary>
    [Fact]
    public void One_trial_of_a_new_stretch_stands_where_it_reads()
    {
        var boat = Trialled.Boat((100, 5985), (150, 5990), (200, 5980), (250, 5985), (300, 5985), (350, 5990)).With(Dock.Strike(Trialled.Day(4.5)));
        Assert.Equal((BandState.InBand, 5990), (boat.Mounting().Band.State, boat.Mounting().Band.PresentRpm));
    }
}
