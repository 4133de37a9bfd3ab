using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Findings;

public class When_it_leaves_the_band
{
    private static readonly (double, double)[] s_rising = [(100, 5500), (150, 5550), (200, 5600), (250, 5650)];

    /// <summary>
    /// Four trials exactly on a line of 1 RPM an hour reach 6000 at 600 h, 350 h after the last. Its doubt by hand: the
    /// residuals are nil, so s = 10/sqrt(12), the tachometer's step; nu = 2, so t = 0.8 sqrt(2/(0.2 x 1.8)) = 1.885618; mean
    /// hours 175, Sxx 12500; Fieller's (b^2 - t^2 s^2/Sxx) u^2 - 2 b d u + d^2 - t^2 s^2/n = 0 with b = 1, d = 425.
    /// </summary>
    [Fact]
    public void A_straight_rise_is_forecast_with_its_interval_as_worked_by_hand()
    {
        var mounting = Trialled.Boat(s_rising).Mounting();
        Assert.Equal(100, mounting.Drift!.Value, 1e-9);
        Assert.Equal(100 - 4.868645, mounting.Drift.Low, 1e-6); // t s / sqrt(Sxx) for 100 h
        Assert.Equal(BandExitState.Forecast, mounting.Exit.State);
        Assert.Equal(BandEdge.Top, mounting.Exit.Edge);
        Assert.Equal(350, mounting.Exit.HoursFromLastTrial!.Value, 1e-9);
        Assert.Equal(330.090668, mounting.Exit.EarliestHours!.Value, 1e-6);
        Assert.Equal(371.928934, mounting.Exit.LatestHours!.Value, 1e-6);
        Assert.Equal(0.8, mounting.Exit.Level);
    }

    [Fact]
    public void A_fall_is_forecast_to_the_bottom()
    {
        var exit = Trialled.Boat([.. s_rising.Select(t => (t.Item1, 11_000 - t.Item2))]).Mounting().Exit;
        Assert.Equal((BandExitState.Forecast, BandEdge.Bottom), (exit.State, exit.Edge));
        Assert.Equal(350, exit.HoursFromLastTrial!.Value, 1e-9);
    }

    [Fact]
    public void The_earliest_exit_is_at_the_last_trial_and_never_before_it()
    {
        // The line at the last trial is 5991.67 and its doubt 11.5 to each side: the top may be reached already.
        var exit = Trialled.Boat((100, 5900), (150, 5950), (200, 5990)).Mounting().Exit;
        Assert.Equal((BandExitState.Forecast, 0), (exit.State, exit.EarliestHours));
        Assert.Equal((6000 - 5991.6666667) / 0.9, exit.HoursFromLastTrial!.Value, 1e-6);
    }

    [Fact]
    public void The_same_drift_from_another_direction_of_arrival_is_the_same() =>
        Assert.Equal(
            Trialled.Boat(s_rising).Mounting().Exit,
            new Fleet().With(Trialled.Boat(s_rising).Placed.Reverse()).Mounting().Exit);

    [Fact]
    public void A_slow_rise_goes_beyond_the_horizon()
    {
        var slow = Dock.OneBoat().With(
            Dock.Trial("2026-01-25T10:00", 5500, 100), Dock.Trial("2026-03-25T10:00", 5530, 600), Dock.Trial("2026-06-25T10:00", 5560, 1100), Dock.Trial("2026-09-25T10:00", 5590, 1600));
        Assert.Equal(BandExitState.BeyondHorizon, slow.Mounting().Exit.State);
        Assert.Null(slow.Mounting().Exit.HoursFromLastTrial);
    }

    [Fact]
    public void Readings_that_only_scatter_show_no_drift() =>
        Assert.Equal(BandExitState.NoDriftShown, Trialled.Boat((100, 5500), (150, 5520), (200, 5490), (250, 5510)).Mounting().Exit.State);

    [Fact]
    public void Readings_that_agree_exactly_show_no_drift_and_keep_the_gauges_doubt()
    {
        var mounting = Trialled.Boat((100, 5500), (150, 5500), (200, 5500)).Mounting();
        Assert.Equal(BandExitState.NoDriftShown, mounting.Exit.State);
        Assert.True(mounting.Drift!.High > 0 && mounting.Drift.Low < 0);
    }

    [Fact]
    public void Of_two_trials_or_of_trials_at_one_hour_nothing_is_said()
    {
        Assert.Equal(BandExitState.TooFewTrials, Trialled.Boat((100, 5500), (150, 5550)).Mounting().Exit.State);
        var one = Trialled.Boat((120, 5500), (120, 5600), (120, 5700)).Mounting();
        Assert.Equal((BandExitState.TooFewTrials, null, null), (one.Exit.State, one.Drift, one.Line));
    }

    /// <summary>Three trials in one afternoon, their hours bridged, would else make a drift of thousands of RPM an hour.</summary>
    [Fact]
    public void Trials_of_one_afternoon_show_no_drift_however_finely_their_hours_are_bridged()
    {
        var afternoon = Dock.OneBoat().With(
            Dock.Hours("2026-02-01T08:00", 150), Dock.Trial("2026-02-01T14:00", 5500), Dock.Trial("2026-02-01T14:20", 5550),
            Dock.Trial("2026-02-01T14:40", 5600), Dock.Hours("2026-02-02T08:00", 154));
        Assert.Equal(3, afternoon.Mounting().Trials.Select(t => t.Hours).Distinct().Count());
        Assert.Equal(BandExitState.TooFewTrials, afternoon.Mounting().Exit.State);
    }

    [Fact]
    public void Without_a_band_nothing_is_said()
    {
        var unknown = new Fleet().With(Dock.Boat(), Dock.Fitted(), Dock.Prop(), Dock.Mounted(), Dock.Trial("2026-02-01T10:00", 9000, 120));
        Assert.Equal(BandExitState.NotKnown, unknown.Mounting().Exit.State);
        Assert.Equal(BandState.NotKnown, unknown.Mounting().Band.State);
        Assert.Equal(9000, unknown.Mounting().Band.ObservedRpm);
    }

    [Fact]
    public void Outside_already_is_no_forecast()
    {
        var exit = Trialled.Boat((100, 6010), (150, 6060), (200, 6110)).Mounting().Exit;
        Assert.Equal(new BandExit(BandExitState.AlreadyOutside, BandEdge.Top), exit);
    }

    [Fact]
    public void The_line_for_a_picture_has_the_last_trial_in_it_once_and_goes_on_past_it()
    {
        var line = Trialled.Boat(s_rising).Mounting().Line!;
        Assert.Equal(100, line.Points[0].Hours);
        Assert.Single(line.Points, p => p.Hours == 250 && !p.Forecast);
        Assert.True(line.Points[^1].Forecast);
        Assert.Equal(line.Points.Select(p => p.Hours).Distinct().Order(), line.Points.Select(p => p.Hours));
        Assert.All(line.Points, p => Assert.True(p.Forecast == p.Hours > 250 && p.LowRpm < p.Rpm && p.Rpm < p.HighRpm));
    }
}
