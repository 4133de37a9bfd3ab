using CsCheck;
using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>Properties of any sensible estimator of drift; no source.</summary>
public sealed class What_does_not_change_a_drift
{
    /// <summary>Histories near the drifts that are weighed: far from them only the largest components are summed, and digits go.</summary>
    private static readonly Gen<DriftSeries> s_near =
        from n in Gen.Int[2, 14]
        from drift in Gen.Double[-5, 25]
        from events in Gen.Select(Gen.Double[0, 70], Gen.Int[0, 3]).Array[0, 4]
        from off in Gen.Double[-300, 300]
        let s = Drifts.Steady(n, drift)
        select s with
        {
            Trials = [.. s.Trials.Select((t, i) => i == n / 2 ? t with { Rpm = t.Rpm + off, AirCelsius = 25, LoadKilograms = off } : t)],
            Events = [.. events.Select(e => new DriftEvent(e.Item1, (StepKind)e.Item2))],
        };

    [Fact]
    public void Another_beginning_of_the_calendar_and_of_the_hour_meter() => Drifts.Any.Sample(
        s => Drifts.SameInAll(Drifts.Assess(s), Drifts.Assess(s with
        {
            Trials = [.. s.Trials.Select(t => t with { Week = t.Week + 512, EngineHours = t.EngineHours + 1024 })],
            Events = [.. s.Events.Select(e => e with { Week = e.Week + 512 })],
        })),
        iter: 300);

    [Fact]
    public void The_order_in_which_records_arrive() => Drifts.Any.Sample(
        s => Drifts.SameInAll(Drifts.Assess(s), Drifts.Assess(s with { Trials = [.. s.Trials.Reverse()], Events = [.. s.Events.Reverse()] })),
        iter: 300);

    [Fact]
    public void A_record_that_comes_late() => Gen.Select(Drifts.Any, Gen.Int[0, 13]).Sample(
        (s, late) =>
        {
            late %= s.Trials.Count;
            var whole = Drifts.Assess(s);
            var found = Drifts.Assess(s with { Trials = [.. s.Trials.Where((_, i) => i != late), s.Trials[late]], Events = [.. s.Events.Skip(1), .. s.Events.Take(1)] });

            Drifts.SameInAll(whole, found);
            Assert.Equal(whole.GrossChances[late], found.GrossChances[^1], 1e-9);
        },
        iter: 300);

    [Fact]
    public void A_trial_whose_own_noise_is_larger_than_its_rpm() => Gen.Select(Drifts.Any, Gen.Double[0, 90]).Sample(
        (s, week) => Drifts.SameInAll(Drifts.Assess(s), Drifts.Assess(s with { Trials = [.. s.Trials, new(week, 4 * week, 9000, OwnSdRpm: 9001)] }), 1e-12),
        iter: 300);

    /// <summary>Below that it still counts for the median RPM and as one more trial that may be gross; no figure that is shown feels it.</summary>
    [Fact]
    public void Next_to_nothing_is_changed_by_a_trial_whose_own_noise_is_most_of_its_rpm()
    {
        var s = Drifts.Steady(8, 20);
        var (without, found) = (Drifts.Assess(s), Drifts.Assess(s with { Trials = [.. s.Trials, new(12, 55, 5640, OwnSdRpm: 5000)] }));

        Drifts.Same(without.RpmPer100Hours, found.RpmPer100Hours, 0.1);
        Drifts.Same(without.LevelRpm!, found.LevelRpm!, 0.5);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-40)]
    public void An_own_noise_that_is_no_number_or_below_nothing(double own)
    {
        var s = Drifts.Steady(8, 20);
        Drifts.SameInAll(Drifts.Assess(s), Drifts.Assess(s with { Trials = [.. s.Trials.Select(t => t with { OwnSdRpm = own })] }), 0);
    }

    [Fact]
    public void A_trial_that_nobody_could_read() => Drifts.Any.Sample(
        s => Drifts.Same(Drifts.Assess(s).RpmPer100Hours, Drifts.Assess(s with { Trials = [.. s.Trials, new(3, double.NaN, 5700), new(double.PositiveInfinity, 4, 5700), new(4, 4, -1)] }).RpmPer100Hours),
        iter: 300);

    [Fact]
    public void An_event_before_the_first_trial_or_after_the_last() => Drifts.Any.Sample(
        s => Drifts.Same(Drifts.Assess(s).RpmPer100Hours, Drifts.Assess(s with { Events = [.. s.Events, new(-1, StepKind.Strike), new(1000, StepKind.Repitch)] }).RpmPer100Hours),
        iter: 300);

    [Fact]
    public void A_look_between_two_trials() => Drifts.Any.Sample(
        s => Drifts.Same(Drifts.Assess(s).RpmPer100Hours, Drifts.Assess(s with { Events = [.. s.Events, new(s.Trials[^1].Week - 0.01, StepKind.None)] }).RpmPer100Hours),
        iter: 300);

    /// <summary>Likelihoods are of shares of the RPM, so a gauge that counts double doubles every drift.</summary>
    [Fact]
    public void A_gauge_that_counts_double_with_all_priors_doubled_gives_the_likelihood_of_double_the_drift() => s_near.Sample(
        s =>
        {
            var once = DriftAlarm.Follow(s, At(10), Drifts.Settings);
            var twice = DriftAlarm.Follow(
                new(2 * s.RatedMinRpm, 2 * s.RatedMaxRpm, [.. s.Trials.Select(t => t with { Rpm = 2 * t.Rpm })], s.Events),
                At(20),
                Drifts.Settings with { LevelSdRpm = 1200, StrikeMeanRpm = 170, StrikeSdRpm = 180, RepitchSdRpm = 500 });
            Assert.All(once.Zip(twice), p => Assert.Equal(p.First.Log, p.Second.Log, 1e-6));
        },
        iter: 200);

    /// <summary>Likewise all that is told: drifts and levels double, chances and shares stay. Priors of the drift are two drifts and their doubles.</summary>
    [Fact]
    public void A_gauge_that_counts_double_with_all_priors_doubled_doubles_levels_and_steps_and_leaves_chances() => s_near.Sample(
        s =>
        {
            var once = DriftEstimator.Assess(s, Either(0, 10), Drifts.Settings);
            var twice = DriftEstimator.Assess(
                new(2 * s.RatedMinRpm, 2 * s.RatedMaxRpm, [.. s.Trials.Select(t => t with { Rpm = 2 * t.Rpm })], s.Events),
                Either(0, 20),
                Drifts.Settings with { LevelSdRpm = 1200, StrikeMeanRpm = 170, StrikeSdRpm = 180, RepitchSdRpm = 500 });
            Assert.Equal(2 * once.LevelRpm!.Value, twice.LevelRpm!.Value, 1e-3);
            Assert.All(once.GrossChances.Zip(twice.GrossChances), p => Assert.Equal(p.First, p.Second, 1e-6));
            Assert.All(once.Steps.Zip(twice.Steps), p => Assert.Equal(2 * p.First.Rpm.Value, p.Second.Rpm.Value, 1e-3));
            Assert.Equal(once.Exit!.ChanceWithin(300), twice.Exit!.ChanceWithin(300), 1e-6);
            Assert.Equal(once.ExitBelow!.ChanceWithin(300), twice.ExitBelow!.ChanceWithin(300), 1e-6);
            Assert.Equal(once.OwnEvidenceNats, twice.OwnEvidenceNats, 1e-6);
        },
        iter: 200);

    /// <summary>A trial right after an event that may do anything, and before another, has nothing to say.</summary>
    [Fact]
    public void A_trial_shut_in_between_two_new_baselines_changes_next_to_nothing()
    {
        var s = Drifts.Steady(8, 20) with { Events = [new(11, StepKind.NewBaseline)] };
        var settings = Drifts.Settings with { RepitchSdRpm = 1e5, GrossChance = 1e-9 };
        var with = s with { Trials = [.. s.Trials, new(12, 55, 5900)], Events = [.. s.Events, new(13, StepKind.NewBaseline)] };

        var (without, found) = (DriftEstimator.Assess(s, Drifts.Prior, settings), DriftEstimator.Assess(with, Drifts.Prior, settings));

        Drifts.Same(without.RpmPer100Hours, found.RpmPer100Hours, 0.02);
    }

    private static SlopePrior At(int drift) => Either(drift, drift);

    private static SlopePrior Either(int drift, int other)
    {
        var weights = new double[SlopeGrid.Count];
        weights[drift - SlopeGrid.Lowest] = weights[other - SlopeGrid.Lowest] = 1;
        return SlopePrior.Of(weights);
    }
}
