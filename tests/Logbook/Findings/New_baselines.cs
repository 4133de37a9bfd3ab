using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Findings;

public class New_baselines
{
    private static readonly Fleet s_three = Trialled.Boat((100, 5500), (150, 5550), (200, 5600));

    private static readonly RepitchProp s_repitch = new(Dock.At(Trialled.Day(2.5), "repitch"), "p1", 15);

    [Fact]
    public void The_first_trial_that_counts_is_the_baseline() => Assert.Equal(5500, s_three.Mounting().BaselineRpm);

    [Fact]
    public void A_strike_that_left_a_mark_begins_a_new_one_and_one_without_does_not()
    {
        Assert.Equal([0, 0, 1], Stretches(s_three.With(Dock.Strike(Trialled.Day(1.5), "scuffed"))));
        Assert.Equal(5600, s_three.With(Dock.Strike(Trialled.Day(1.5), "scuffed")).Mounting().BaselineRpm);
        Assert.Equal([0, 0, 0], Stretches(s_three.With(Dock.Strike(Trialled.Day(1.5), "no_mark"))));
    }

    [Fact]
    public void A_repitch_while_it_is_fitted_begins_a_new_one_and_one_before_does_not()
    {
        Assert.Equal([0, 1, 1], Stretches(s_three.With(s_repitch with { Entry = Dock.At(Trialled.Day(0.5), "repitch") })));
        Assert.Equal([0, 0, 0], Stretches(s_three.With(s_repitch with { Entry = Dock.At("2026-01-01T10:00", "repitch") })));
    }

    [Fact]
    public void After_one_without_a_trial_nothing_is_said_but_that()
    {
        var since = s_three.With(Dock.Strike(Trialled.Day(2.5))).Mounting();
        Assert.Equal(BandExitState.NoTrialSinceNewBaseline, since.Exit.State);
        Assert.Null(since.BaselineRpm);
        Assert.All(since.Line!.Points, p => Assert.False(p.Forecast));
    }

    [Fact]
    public void Where_it_stood_before_a_repitch_is_not_called_where_it_stands()
    {
        var over = Trialled.Boat((100, 6010), (150, 6060), (200, 6110)).With(s_repitch);
        Assert.Equal(BandExitState.NoTrialSinceNewBaseline, over.Mounting().Exit.State);
        Assert.Contains("no trial since", Attentions.Of(over.Finding()).Single().Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void One_trial_since_gives_a_level_the_drift_is_shared_and_the_repitch_has_its_effect()
    {
        // 5500, 5550, 5600 at 1 RPM an hour; a repitch to more pitch; 5200 at 250 h.
        var since = Trialled.Boat((100, 5500), (150, 5550), (200, 5600), (250, 5200)).With(s_repitch).Mounting();
        Assert.True(since.Exit.State is BandExitState.Forecast or BandExitState.BeyondHorizon);
        Assert.Equal(5200, since.Line!.Points[0].Rpm, 40.0);
        Assert.Equal(250, since.Line.Points[0].Hours);
        Assert.True(since.Line.Points.Count > 10);
        var step = Assert.Single(since.Steps);
        Assert.Equal(["repitched to 15 in"], step.What);
        Assert.InRange(step.Rpm.Value, -470, -320);
        Assert.True(step.Rpm.Low < step.Rpm.Value && step.Rpm.Value < step.Rpm.High && step.Rpm.High < 0);
    }

    /// <summary>A strike that lifts the level must not be taken for wear.</summary>
    [Fact]
    public void A_strikes_cost_is_told_apart_from_drift()
    {
        (double, double)[] trials = [(100, 5500), (130, 5510), (160, 5495), (190, 5505), (220, 5640), (250, 5655), (280, 5640), (310, 5650)];
        var struck = Trialled.Boat(trials).With(Dock.Strike(Trialled.Day(3.5), "bent")).Mounting();
        var without = Trialled.Boat(trials).Mounting();
        Assert.InRange(Assert.Single(struck.Steps).Rpm.Value, 90, 160);
        Assert.Equal("strike, bent", Assert.Single(struck.Steps[0].What));
        Assert.True(struck.Drift!.Value < without.Drift!.Value / 2);
        Assert.True(struck.Watch!.EvidenceToOne < without.Watch!.EvidenceToOne);
    }

    [Fact]
    public void A_step_of_which_no_trial_tells_is_not_told() =>
        Assert.Empty(s_three.With(Dock.Strike(Trialled.Day(2.5))).Mounting().Steps);

    [Fact]
    public void A_trial_since_that_does_not_count_is_none()
    {
        var since = s_three.With(Dock.Strike(Trialled.Day(2.5)), Dock.Trial(Trialled.Day(3), 3500, 250, throttle: "part")).Mounting();
        Assert.Equal(BandExitState.NoTrialSinceNewBaseline, since.Exit.State);
    }

    [Fact]
    public void The_marks_of_a_mounting_are_in_order_with_their_hours()
    {
        var marks = s_three.With(Dock.Strike(Trialled.Day(1.5)), s_repitch, Dock.Look(Trialled.Day(2)), Dock.Look("2026-01-01T10:00")).Mounting().Marks;
        Assert.Equal([HistoryMarkKind.Fitted, HistoryMarkKind.Strike, HistoryMarkKind.Inspection, HistoryMarkKind.Repitch], marks.Select(m => m.Kind));
        Assert.Equal(175, marks[1].Hours!.Value, 1e-9);
    }

    private static IEnumerable<int> Stretches(Fleet fleet) => fleet.Mounting().Trials.Select(t => t.Stretch);
}
