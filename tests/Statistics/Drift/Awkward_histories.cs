using CsCheck;
using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>Never a NaN, never an exception, never a confident number from nothing.</summary>
public sealed class Awkward_histories
{
    private static readonly DriftTrial One = new(3, 12, 5700, 20, 50);

    public static TheoryData<string> Names => [.. Cases.Keys];

    private static Dictionary<string, DriftSeries> Cases { get; } = new()
    {
        ["no trial"] = new(5000, 6000, [], []),
        ["one trial"] = new(5000, 6000, [One], []),
        ["two trials at the same hour"] = new(5000, 6000, [One, One with { Week = 4, Rpm = 5750 }], []),
        ["all trials on one day"] = new(5000, 6000, [.. Enumerable.Range(0, 6).Select(i => One with { Rpm = 5700 + i })], []),
        ["hours that run backwards"] = new(5000, 6000, [.. Enumerable.Range(0, 6).Select(i => new DriftTrial(i, 300 - (50 * i), 5700 + (9 * i)))], []),
        ["500 trials"] = Drifts.Steady(500, 12, 2),
        ["a constant series"] = new(5000, 6000, [.. Enumerable.Range(0, 9).Select(i => new DriftTrial(i, 20 * i, 5700))], []),
        ["an event between every two trials"] = Drifts.Steady(12, 20) with { Events = [.. Enumerable.Range(0, 12).Select(i => new DriftEvent((5 * i) + 1, StepKind.Strike))] },
        ["200 trials with an event between every two"] = Drifts.Steady(200, 20, 3) with { Events = [.. Enumerable.Range(0, 200).Select(i => new DriftEvent((5 * i) + 1, StepKind.Repitch))] },
        ["no temperature, no load"] = Drifts.Steady(6, 20),
        ["no usage"] = new(5000, 6000, [.. Enumerable.Range(0, 6).Select(i => new DriftTrial(5 * i, 40, 5700 + (20 * i)))], []),
        ["a band whose ends are swapped"] = Drifts.Steady(6, 20) with { RatedMinRpm = 6000, RatedMaxRpm = 5000 },
        ["no band"] = Drifts.Steady(6, 20) with { RatedMinRpm = double.NaN, RatedMaxRpm = double.NaN },
        ["an unbelievable spread"] = new(5000, 6000, [new(0, 0, 1), new(1, 1e-9, 900_000), new(2, 9e6, 5000), new(3, 9.5e6, 5000)], []),
        ["unbelievable weather"] = new(5000, 6000, [new(0, 0, 5700, 1e300, -1e300), new(1, 20, 5710, double.NaN, double.PositiveInfinity), new(2, 50, 5700)], []),
        ["own noise of every kind"] = Drifts.Steady(6, 20) with { Trials = [.. Drifts.Steady(6, 20).Trials.Zip([double.NaN, -1, double.PositiveInfinity, 0, 40, 1e300], (t, own) => t with { OwnSdRpm = own })] },
        ["all trials too rough to count"] = Drifts.Steady(6, 20) with { Trials = [.. Drifts.Steady(6, 20).Trials.Select(t => t with { OwnSdRpm = 1e9 })] },
        ["two trials a few hours apart"] = Drifts.Steady(2, 20, 4),
        ["200 trials that rise faster than any drift of the grid"] = new(1000, 3000, [.. Enumerable.Range(0, 200).Select(i => new DriftTrial(4 * i, 6.25 * i, 1000 + (10 * i) + (20 * (i % 3))))], []),
        ["no finite number at all"] = new(double.NaN, double.PositiveInfinity, [new(double.NaN, double.NaN, double.NaN)], [new(double.NaN, StepKind.Strike)]),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void Are_assessed_without_fuss(string name)
    {
        var series = Cases[name];

        var found = Drifts.Assess(series);
        Drifts.Sound(found, series);
        Drifts.Sound(NextTrial.Of(found, Drifts.Settings, series, new(30)));

        if (series.Trials.Count > 100) return; // alarms are looked at trial by trial, and these are long
        Assert.All(DriftAlarm.Follow(series, DriftAlarm.Alternative, Drifts.Settings), e => Assert.True(double.IsFinite(e.Log)));
    }

    [Theory]
    [InlineData("no trial")]
    [InlineData("one trial")]
    [InlineData("two trials at the same hour")]
    [InlineData("all trials on one day")]
    [InlineData("no usage")]
    [InlineData("hours that run backwards")]
    [InlineData("no finite number at all")]
    [InlineData("all trials too rough to count")]
    public void Leave_the_prior_as_it_was_and_say_so_when_they_hold_nothing(string name)
    {
        var found = Drifts.Assess(Cases[name]);

        Assert.True(found.PriorOnly);
        Assert.All(found.Weights.Zip(Drifts.Prior.Weights.ToArray()), p => Assert.Equal(p.Second, p.First, 1e-7));
    }

    /// <summary>Four hours of wear are nothing beside the scatter of a trial: the figure is the fleet's, and no date is drawn from it.</summary>
    [Fact]
    public void Trials_that_hardly_speak_leave_the_figure_to_the_fleet()
    {
        var found = Drifts.Assess(Cases["two trials a few hours apart"]);

        Assert.True(found.PriorOnly);
        Assert.InRange(found.OwnEvidenceNats, 0, DriftAssessment.LeastOwnEvidenceNats);
        Assert.NotNull(found.Exit);
        Assert.False(Drifts.Assess(Drifts.Steady(12, 40, 40)).PriorOnly);
    }

    /// <summary>With steps that may be anything between all trials nothing is left to tell the drift by.</summary>
    [Fact]
    public void An_event_between_every_two_trials_leaves_the_figure_to_the_fleet()
    {
        var s = Drifts.Steady(12, 20) with { Events = [.. Enumerable.Range(0, 12).Select(i => new DriftEvent((5 * i) + 1, StepKind.NewBaseline))] };
        var found = Drifts.Assess(s);

        Assert.True(found.PriorOnly);
        Assert.Equal(11, found.Steps.Count);
    }

    [Fact]
    public void Swapped_ends_of_a_band_are_the_same_band() => Assert.Equal(
        Ends(Drifts.Steady(6, 20)), Ends(Cases["a band whose ends are swapped"]));

    [Fact]
    public void Hours_that_run_backwards_are_said_to() => Assert.True(Drifts.Assess(Cases["hours that run backwards"]).HoursFell);

    [Fact]
    public void Many_trials_find_the_drift_among_many_gross_errors()
    {
        var s = Drifts.Steady(200, 18, 3);
        s = s with { Trials = [.. s.Trials.Select((t, i) => i % 12 == 5 ? t with { Rpm = t.Rpm - 500 } : t)] };

        var found = Drifts.Assess(s);

        Assert.InRange(found.RpmPer100Hours.Value, 16, 20);
        Assert.All(found.GrossChances.Index(), g => Assert.Equal(g.Index % 12 == 5, g.Item > 0.9));
    }

    [Fact]
    public void Whatever_comes_is_answered() => Drifts.Any.Sample(s => Drifts.Sound(Drifts.Assess(s), s), iter: 1000);

    private static (BandExit?, BandExit?) Ends(DriftSeries s) => (Drifts.Assess(s).Exit, Drifts.Assess(s).ExitBelow);
}
