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
    public void The_last_reading_over_the_top_is_outside_though_the_line_is_inside()
    {
        // The line at the last trial, by hand: mean 5927.5, slope 16500/50000, so 5977.
        var mounting = Trialled.Boat((100, 5900), (200, 5900), (300, 5900), (400, 6010)).Mounting();
        Assert.Equal(5977, mounting.Line!.Points.Single(p => p.Hours == 400).Rpm, 1e-9);
        Assert.Equal(new BandStanding(BandState.AboveTop, 6010, 6010, -10, BandEdge.Top), mounting.Band);
    }

    [Fact]
    public void The_line_over_the_top_is_outside_though_the_last_reading_is_inside()
    {
        // Mean 5947.5, slope 38500/50000, so 6063 at the last trial.
        var band = Trialled.Boat((100, 5800), (200, 5900), (300, 6100), (400, 5990)).Mounting().Band;
        Assert.Equal((BandState.AboveTop, 5990), (band.State, band.ObservedRpm));
        Assert.Equal(6063, band.PresentRpm!.Value, 1e-9);
        Assert.Equal(-63, band.MarginRpm!.Value, 1e-9);
    }

    [Fact]
    public void Inside_by_both_it_stands_by_the_less_favourable()
    {
        var reading = Trialled.Boat((100, 5500), (200, 5560), (300, 5540), (400, 5600)).Mounting().Band;
        Assert.Equal((BandState.InBand, 5600, 5600), (reading.State, reading.ObservedRpm, reading.PresentRpm)); // the line says 5592

        var line = Trialled.Boat((100, 5500), (200, 5560), (300, 5600), (400, 5590)).Mounting().Band;
        Assert.Equal(5609, line.PresentRpm!.Value, 1e-9); // mean 5562.5, slope 15500/50000, 150 h on
        Assert.Equal(391, line.MarginRpm!.Value, 1e-9);
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
}
