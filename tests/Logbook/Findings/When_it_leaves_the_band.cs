using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Statistics.Drift;
using BandExit = FleetWake.Logbook.Findings.BandExit;

namespace FleetWake.Logbook.Tests.Findings;

public class When_it_leaves_the_band
{
    /// <summary>Eight trials of a prop that wears by 40 RPM in 100 engine hours, and scatter as trials do.</summary>
    private static readonly (double, double)[] s_rising =
        [(100, 5520), (150, 5525), (200, 5570), (250, 5560), (300, 5610), (350, 5600), (400, 5640), (450, 5660)];

    /// <summary>The finding is the estimator's, told what the record tells.</summary>
    [Fact]
    public void A_rise_is_forecast_as_the_estimator_says()
    {
        var mounting = Trialled.Boat(s_rising).Mounting();
        var trials = s_rising.Select((t, i) => new DriftTrial(i * 20 / 7.0, t.Item1, t.Item2));
        var prior = FleetPriors.Trade.Drift.Group("aluminium", "salt");
        var alone = DriftEstimator.Assess(new(5000, 6000, [.. trials], []), prior, FleetPriors.Trade.Drift.Settings);
        Assert.Equal(alone.RpmPer100Hours, mounting.Drift);
        Assert.Equal(alone.LevelRpm, mounting.LevelRpm);
        Assert.Equal((BandExitState.Forecast, BandEdge.Top), (mounting.Exit.State, mounting.Exit.Edge));
        Assert.Equal(alone.Exit!.MedianHours, mounting.Exit.HoursFromLastTrial!.Value, 1e-9);
        Assert.Equal(alone.Exit.EarliestHours, mounting.Exit.EarliestHours!.Value, 1e-9);
        Assert.Equal(alone.Exit.ChanceWithin(100) + alone.ExitBelow!.ChanceWithin(100), mounting.Exit.Within100HoursChance!.Value, 1e-12);
        Assert.Equal(alone.GrossChances, mounting.Trials.Select(t => t.GrossChance!.Value));
        Assert.Equal(0.8, mounting.Exit.Level);
        Assert.False(mounting.FleetOnly);
    }

    [Fact]
    public void A_fall_is_forecast_to_the_bottom()
    {
        var exit = Trialled.Boat([.. s_rising.Select(t => (t.Item1, 10_700 - t.Item2))]).Mounting().Exit;
        Assert.Equal(BandEdge.Bottom, exit.Edge);
        Assert.True(exit.State is BandExitState.Forecast or BandExitState.BeyondHorizon);
    }

    [Fact]
    public void The_earliest_exit_is_at_the_last_trial_and_never_before_it()
    {
        var exit = Trialled.Boat((100, 5900), (150, 5950), (200, 5960), (250, 5990)).Mounting().Exit;
        Assert.Equal((BandExitState.Forecast, 0), (exit.State, exit.EarliestHours));
    }

    [Fact]
    public void The_same_drift_from_another_direction_of_arrival_is_the_same() =>
        Assert.Equal(
            Trialled.Boat(s_rising).Mounting().Exit,
            new Fleet().With(Trialled.Boat(s_rising).Placed.Reverse()).Mounting().Exit);

    [Fact]
    public void A_slow_rise_goes_beyond_the_horizon()
    {
        var slow = Dock.OneBoat().With(Enumerable.Range(0, 9).Select(i =>
            (ICommand)Dock.Trial($"2026-{i + 2:00}-25T10:00", 5500 + (2 * i), 100 + (250 * i))));
        Assert.Equal(BandExitState.BeyondHorizon, slow.Mounting().Exit.State);
        Assert.Null(slow.Mounting().Exit.HoursFromLastTrial);
    }

    /// <summary>The prior alone would name a drift and a day.</summary>
    [Fact]
    public void Of_one_trial_or_of_trials_at_one_hour_no_date_is_named()
    {
        foreach (var boat in new[] { Trialled.Boat((100, 5500)), Trialled.Boat((120, 5500), (120, 5600), (120, 5700)) })
        {
            var mounting = boat.Mounting();
            Assert.Equal((BandExitState.TooFewTrials, null, null), (mounting.Exit.State, mounting.Exit.Dates, mounting.Line));
            Assert.True(mounting.FleetOnly);
            Assert.NotNull(mounting.Drift); // the fleet's, and said to be
        }
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
        Assert.Null(unknown.Mounting().NextTrial);
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
        Assert.Single(line.Points, p => p.Hours == 450 && !p.Forecast);
        Assert.True(line.Points[^1].Forecast);
        Assert.Equal(line.Points.Select(p => p.Hours).Distinct().Order(), line.Points.Select(p => p.Hours));
        Assert.All(line.Points, p => Assert.True(p.Forecast == p.Hours > 450 && p.LowRpm < p.Rpm && p.Rpm < p.HighRpm));
    }

    /// <summary>What matters is the next 100 hours, not those that have run.</summary>
    [Fact]
    public void Soon_is_counted_from_what_the_meter_shows()
    {
        double Chance(double meter) => Trialled.Boat(s_rising).With(Dock.Hours("2026-12-14T10:00", meter)).Mounting().Exit.Within100HoursChance!.Value;
        Assert.True(Chance(1200) > Chance(800) && Chance(800) > Chance(451));
    }

    [Fact]
    public void A_prop_that_came_off_has_hours_and_no_dates_and_no_next_trial()
    {
        var off = Trialled.Boat(s_rising).With(Dock.Removed("2026-07-01T10:00"), Dock.Hours("2026-12-14T10:00", 900)).History();
        var ended = EveryMounting.Of(off).Single().Wear;
        Assert.Equal(Trialled.Boat(s_rising).Mounting().Exit.HoursFromLastTrial, ended.Exit.HoursFromLastTrial);
        Assert.Equal((null, null), (ended.Exit.Dates, ended.NextTrial));
    }

    [Fact]
    public void Dates_follow_the_meter_and_never_lie_before_its_last_reading()
    {
        var busy = Trialled.Boat(s_rising).Mounting().Exit.Dates!;
        Assert.Equal(new DateOnly(2026, 6, 14), busy.ReckonedFrom); // the eighth trial
        Assert.True(busy.ReckonedFrom <= busy.Earliest && busy.Earliest <= busy.On);

        // 50 h in twenty days is some 76 h a month; a boat that lies still since keeps its hours, and the days go by.
        Assert.InRange(busy.HoursPerMonth, 50, 90);
        var idle = Trialled.Boat(s_rising).With(Dock.Hours("2026-10-14T10:00", 451)).Mounting().Exit.Dates!;
        Assert.Equal(new DateOnly(2026, 10, 14), idle.ReckonedFrom);
        Assert.True(idle.HoursPerMonth < busy.HoursPerMonth && idle.On > busy.On);
    }
}
