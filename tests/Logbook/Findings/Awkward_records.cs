using System.Text.Json;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Findings;

/// <summary>Records that no estimator likes: never a NaN (JSON would refuse it), never an exception, never a confident number from nothing.</summary>
public class Awkward_records
{
    [Fact]
    public void One_trial_gives_the_fleets_drift_and_no_date()
    {
        var one = Sound(Trialled.Boat((100, 5500)));
        Assert.True(one.FleetOnly);
        Assert.Equal((BandExitState.TooFewTrials, null, null), (one.Exit.State, one.Exit.Dates, one.Watch));
    }

    [Fact]
    public void Two_trials_at_one_hour_say_nothing_of_drift() => Assert.True(Sound(Trialled.Boat((100, 5500), (100, 5900))).FleetOnly);

    [Fact]
    public void Hours_that_run_backwards_are_asked_about_and_the_rest_counts()
    {
        var back = Trialled.Boat((100, 5500), (150, 5520), (120, 5540), (200, 5560), (250, 5580));
        Assert.NotEmpty(back.History().Contradictions);
        Assert.InRange(Sound(back).Drift!.Value, 0, 60);
    }

    [Fact]
    public void All_trials_on_one_day_say_nothing_of_drift()
    {
        var day = Dock.OneBoat().With(Enumerable.Range(0, 8).Select(i => (ICommand)Dock.Trial($"2026-02-01T{10 + i}:00", 5500 + (15 * i), 120)));
        Assert.Equal((true, BandExitState.TooFewTrials), (Sound(day).FleetOnly, Sound(day).Exit.State));
    }

    [Fact]
    public void Five_hundred_trials_are_a_sharp_drift()
    {
        var many = Dock.OneBoat().With(Enumerable.Range(0, 500).Select(i =>
            (ICommand)Dock.Trial($"{new DateTime(2026, 1, 25, 10, 0, 0).AddHours(20 * i):yyyy-MM-ddTHH:mm}Z", Math.Round(5300 + (0.2 * i) + (40 * Math.Sin(i * 1.7))), 100 + (2 * i))));
        Assert.Equal(10, Sound(many).Drift!.Value, 2.5);
        Assert.InRange(Sound(many).Drift!.High - Sound(many).Drift!.Low, 0.1, 4);
    }

    [Fact]
    public void A_constant_series_drifts_little_and_not_for_certain_not_at_all()
    {
        var flat = Sound(Trialled.Boat([.. Enumerable.Range(0, 8).Select(i => (100.0 + (40 * i), 5500.0))]));
        Assert.InRange(flat.Drift!.Value, -2, 8);
        Assert.True(flat.Drift.High - flat.Drift.Low > 2);
        Assert.Null(flat.Watch!.RaisedAt);
    }

    /// <summary>Each trial has a level of its own: no two of them tell of drift.</summary>
    [Fact]
    public void An_event_between_every_two_trials_leaves_the_fleets_drift()
    {
        (double, double)[] trials = [(100, 5400), (150, 5450), (200, 5500), (250, 5550)];
        var parted = Sound(Trialled.Boat(trials).With(Enumerable.Range(0, 3).Select(i => (ICommand)new CleanHull(Dock.At(Trialled.Day(i + 0.5), $"clean {i}"), "kea"))));
        var whole = Sound(Trialled.Boat(trials));
        Assert.True(parted.Drift!.High - parted.Drift.Low > 0.9 * (Sound(Trialled.Boat((100, 5400))).Drift!.High - Sound(Trialled.Boat((100, 5400))).Drift!.Low));
        Assert.True(parted.Watch!.EvidenceToOne < whole.Watch!.EvidenceToOne);
    }

    [Fact]
    public void A_meter_that_never_moves_says_nothing_of_drift_and_names_no_day()
    {
        var idle = Sound(Trialled.Boat([.. Enumerable.Range(0, 10).Select(i => (100.0, 5500.0 + (15 * i)))]));
        Assert.Equal((true, BandExitState.TooFewTrials, null, null), (idle.FleetOnly, idle.Exit.State, idle.Exit.Dates, idle.Line));
    }

    [Fact]
    public void Temperatures_read_now_and_then_change_nothing_for_the_worse()
    {
        (double, double)[] trials = [.. Enumerable.Range(0, 8).Select(i => (100.0 + (40 * i), 5500.0 + (16 * i)))];
        var some = Sound(Dock.OneBoat().With(trials.Select((t, i) => (ICommand)(Dock.Trial(Trialled.Day(i), t.Item2, t.Item1) with { AirTemperatureCelsius = i % 3 == 0 ? 20 : null }))));
        Assert.False(some.AtReference);
        Assert.Equal(Sound(Trialled.Boat(trials)).Drift!.Value, some.Drift!.Value, 3.0);
    }

    private static MountingFinding Sound(Fleet fleet)
    {
        var finding = fleet.Finding();
        JsonSerializer.Serialize(finding, LogbookJson.Options);
        return finding.Positions.Single().Mounting!;
    }
}
