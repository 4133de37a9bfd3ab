using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>What that strike cost in RPM, and what that repitch gave back. Properties, no source.</summary>
public sealed class What_an_event_did_to_the_level
{
    [Fact]
    public void A_strike_among_many_trials_shows_what_it_cost()
    {
        var s = Drifts.Steady(12, 5);
        s = s with { Trials = [.. s.Trials.Select((t, i) => i >= 6 ? t with { Rpm = t.Rpm + 150 } : t)], Events = [new(28, StepKind.Strike)] };

        var step = Assert.Single(Drifts.Assess(s).Steps);

        Assert.Equal([0], step.Events);
        Assert.InRange(step.Rpm.Value, 90, 180);
        Assert.InRange(step.Rpm.StandardError, 10, 45);
        Assert.Equal(0.8, step.Rpm.Level);
        Assert.True(step.OwnEvidenceNats > 0.5, $"{step.OwnEvidenceNats}");
    }

    [Fact]
    public void Events_between_the_same_two_trials_are_one_step_and_say_which_they_were()
    {
        var s = Drifts.Steady(6, 5) with
        {
            Events = [new(12, StepKind.Repitch), new(6, StepKind.Strike), new(7, StepKind.None), new(11, StepKind.Strike), new(-1, StepKind.Strike), new(99, StepKind.Repitch)],
        };

        var steps = Drifts.Assess(s).Steps;

        Assert.Equal([[1], [3, 0]], steps.Select(e => e.Events.ToArray()));
    }

    [Fact]
    public void Without_an_event_between_trials_there_is_no_step() => Assert.Empty(Drifts.Assess(Drifts.Steady(6, 5)).Steps);

    /// <summary>A trial too rough to see a step by: what is told of it is what such events do anywhere.</summary>
    [Fact]
    public void A_step_that_no_trial_speaks_of_is_told_as_the_prior_with_no_evidence()
    {
        var s = new DriftSeries(5000, 6000, [new(0, 0, 5600), new(5, 50, 5900, OwnSdRpm: 5000)], [new(2, StepKind.Strike)]);

        var step = Assert.Single(Drifts.Assess(s).Steps);

        Assert.Equal(Drifts.Settings.StrikeMeanRpm, step.Rpm.Value, 1.0);
        Assert.Equal(Drifts.Settings.StrikeSdRpm, step.Rpm.StandardError, 1.0);
        Assert.InRange(step.OwnEvidenceNats, 0, 1e-3);
    }
}
