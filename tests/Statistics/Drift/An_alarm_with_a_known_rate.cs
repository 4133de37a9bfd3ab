using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Tests.Simulations;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>
/// How often a fleet's alarm is false, counted on its own trials, held against a second simulation that shares no line with
/// it. Computed here; the bound is Ville's (1939, cited from memory).
/// </summary>
public sealed class An_alarm_with_a_known_rate
{
    private static readonly DriftSettings s_settings = DriftSettings.Recommended with { GrossChance = 0.05, Noise = NoiseNodes.LogNormal(0.0065, 0.15) };
    private static readonly DriftSeries[] s_schedule = [.. new InventedFleet(77).Draw(40, null, uniform: false).Select(m => m.Member.Series)];

    [Fact]
    public void Agrees_with_another_simulation_within_the_luck_of_both()
    {
        var found = AlarmCalibration.At(DriftAlarm.RecommendedThreshold, s_schedule, s_settings);
        var runs = Enumerable.Range(0, 60).SelectMany(pass => s_schedule.Select((s, i) => Run(s, new((1000 * pass) + i)))).ToArray();
        var (alarms, years) = Count(runs, DriftAlarm.RecommendedThreshold);

        Assert.True(found.BoatYears > 500 && years > 500, $"{found.BoatYears}, {years}");
        Assert.Equal(alarms / years, found.FalseAlarmsPerBoatYear, 3 * Math.Sqrt(alarms / years * ((1 / years) + (1 / found.BoatYears))));
        Assert.InRange(found.FalseAlarmsPerBoatYear, 0.01, 0.06);
    }

    /// <summary>Without drift at most exp(-threshold) of all mountings ever reach the threshold, however often one looks.</summary>
    [Fact]
    public void Stays_within_its_bound_on_few_trials_and_on_many()
    {
        var many = Even(trials: 24, weeksBetween: 2, hoursBetween: 10);
        foreach (var runs in new[] { s_schedule.Concat(s_schedule).Select((s, i) => Run(s, new(5 + i))).ToArray(), [.. Enumerable.Range(0, 100).Select(i => Run(many, new(900 + i)))] })
        {
            foreach (var threshold in (double[])[0.3, 0.7, 1.4, 2.2])
            {
                var bound = Math.Exp(-threshold);
                Assert.InRange(Count(runs, threshold).Alarms / runs.Length, 0, bound + (3 * Math.Sqrt(bound * (1 - bound) / runs.Length)));
            }
        }
    }

    [Fact]
    public void Twice_the_trials_a_year_bring_more_false_alarms_and_a_higher_threshold_when_they_are_too_many()
    {
        DriftSeries[] A(int trials, int year) => [.. Enumerable.Repeat(Even(trials, 52.0 / year, 120.0 / year), 5)];
        var (eight, sixteen) = (AlarmCalibration.Of(A(12, year: 8), s_settings), AlarmCalibration.At(DriftAlarm.RecommendedThreshold, A(20, year: 16), s_settings));
        var many = AlarmCalibration.Of([.. Enumerable.Repeat(Even(12, 52.0 / 32, 15), 5)], s_settings);

        Assert.Equal(DriftAlarm.RecommendedThreshold, eight.Threshold);
        Assert.True(sixteen.FalseAlarmsPerBoatYear > 1.3 * eight.FalseAlarmsPerBoatYear, $"{eight}, {sixteen}");
        Assert.True(many.Threshold > DriftAlarm.RecommendedThreshold, $"{many}");
        Assert.InRange(many.FalseAlarmsPerBoatYear, 0.02, 0.05);
    }

    [Fact]
    public void Is_the_same_from_the_same_seed_in_any_order_of_the_mountings_and_from_any_beginning_of_the_calendar()
    {
        var once = AlarmCalibration.Of(s_schedule, s_settings);

        Assert.Equal(once, AlarmCalibration.Of(s_schedule, s_settings));
        Assert.Equal(once.FalseAlarmsPerBoatYear, AlarmCalibration.Of([.. s_schedule.Reverse()], s_settings).FalseAlarmsPerBoatYear, 1e-12);
        Assert.Equal(once.FalseAlarmsPerBoatYear, AlarmCalibration.Of([.. s_schedule.Select(Later)], s_settings).FalseAlarmsPerBoatYear, 1e-9);
        Assert.NotEqual(once, AlarmCalibration.Of(s_schedule, s_settings, seed: 1));
        Assert.Equal((40, true), (once.Mountings, once.OwnSchedule));
        Assert.True(0 < once.Low && once.Low < once.FalseAlarmsPerBoatYear && once.FalseAlarmsPerBoatYear < once.High, $"{once}");

        static DriftSeries Later(DriftSeries s) => s with
        {
            Trials = [.. s.Trials.Select(t => t with { Week = t.Week + 512, EngineHours = t.EngineHours + 256 })],
            Events = [.. s.Events.Select(e => e with { Week = e.Week + 512 })],
        };
    }

    /// <summary>What was read does not matter, only when: the RPM are drawn anew.</summary>
    [Fact]
    public void Does_not_know_what_the_trials_read() => Assert.Equal(
        AlarmCalibration.Of(s_schedule, s_settings),
        AlarmCalibration.Of([.. s_schedule.Select(s => s with { Trials = [.. s.Trials.Select(t => t with { Rpm = t.Rpm + t.EngineHours })] })], s_settings));

    [Fact]
    public void Takes_the_usual_trials_where_a_fleet_has_too_few_of_its_own()
    {
        DriftSeries one = new(5000, 6000, [new(3, 9, 5600)], []), sameDay = new(5000, 6000, [new(3, 9, 5600), new(3, 9, 5650)], []);
        var usual = AlarmCalibration.Of([], s_settings);

        Assert.Equal((0, false), (usual.Mountings, usual.OwnSchedule));
        Assert.InRange(usual.FalseAlarmsPerBoatYear, 0.01, 0.05);
        Assert.Equal(usual, AlarmCalibration.Of([.. s_schedule[..4], .. Enumerable.Repeat(one, 9), .. Enumerable.Repeat(sameDay, 9)], s_settings));
        Assert.True(AlarmCalibration.Of(s_schedule[..5], s_settings).OwnSchedule);
    }

    [Fact]
    public void Goes_as_high_as_is_wished_and_refuses_a_wish_that_nothing_meets()
    {
        var rare = AlarmCalibration.Of(s_schedule, s_settings, atMost: 0.005);
        Assert.InRange(rare.Threshold, DriftAlarm.RecommendedThreshold + 0.1, AlarmCalibration.HighestThreshold);
        Assert.InRange(rare.FalseAlarmsPerBoatYear, 0, 0.005);
        Assert.Throws<ArgumentOutOfRangeException>(() => AlarmCalibration.Of(s_schedule, s_settings, atMost: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => AlarmCalibration.Of(s_schedule, s_settings, atMost: double.NaN));
    }

    [Fact]
    public void Is_answered_for_whatever_trials_there_were()
    {
        DriftSeries[] odd =
        [
            .. s_schedule[..2], new(double.NaN, 0, [new(1, 5, 700), new(2, 5, 5700), new(3, 1, 5600)], []), new(1, 2, [new(1, 5, 1.5), new(9, 60, 1.6)], [new(3, StepKind.Repitch)]),
            new(6000, 5000, [new(0, 0, 1), new(1e9, 9e6, 900_000, 1e300, double.NaN), new(double.NaN, 3, 5)], []), new(5000, 6000, [], []),
        ];
        var found = AlarmCalibration.Of(odd, s_settings);

        Assert.Equal(5, found.Mountings);
        Assert.True(double.IsFinite(found.FalseAlarmsPerBoatYear) && found.Low <= found.FalseAlarmsPerBoatYear && found.FalseAlarmsPerBoatYear <= found.High && double.IsFinite(found.High), $"{found}");
    }

    private static DriftSeries Even(int trials, double weeksBetween, double hoursBetween) =>
        new(5000, 6000, [.. Enumerable.Range(0, trials).Select(i => new DriftTrial(weeksBetween * i, hoursBetween * i, 5600))], []);

    private static (double Alarms, double Years) Count(IReadOnlyCollection<Silent> runs, double threshold)
    {
        var (alarms, weeks) = (0.0, 0.0);
        foreach (var run in runs)
        {
            var alarm = DriftAlarm.First(run.Evidence, threshold);
            alarms += alarm is null ? 0 : 1;
            weeks += run.Series.Trials[alarm?.Trial ?? ^1].Week - run.Series.Trials[0].Week;
        }

        return (alarms, weeks * 7 / 365.25);
    }

    /// <summary>A mounting without drift: what the settings believe, written down event by event and trial by trial.</summary>
    private static Silent Run(DriftSeries plan, Draws draws)
    {
        var at = s_settings.LevelShare * (plan.RatedMinRpm + plan.RatedMaxRpm) / 2;
        var level = at + (s_settings.LevelSdRpm * draws.Normal());
        var noise = 0.0065 * Math.Exp(0.15 * draws.Normal());
        var (warmth, load) = (s_settings.TemperatureSdShare * draws.Normal(), s_settings.LoadSdShare * draws.Normal());
        var jumps = plan.Events.ToDictionary(e => e, e => e.Kind switch
        {
            StepKind.None => 0,
            StepKind.Strike => s_settings.StrikeMeanRpm + (s_settings.StrikeSdRpm * draws.Normal()),
            _ => s_settings.RepitchSdRpm * draws.Normal(),
        });
        var series = plan with
        {
            Trials = [.. plan.Trials.Select(t =>
            {
                var share = (noise * draws.Normal()) + (draws.Uniform(0, 1) < s_settings.GrossChance ? s_settings.GrossShare * draws.Normal() : 0)
                    + (warmth * ((t.AirCelsius ?? 15) - 15)) + (load * (t.LoadKilograms ?? 0) / 100);
                return t with { Rpm = (level * (1 + share)) + jumps.Where(j => j.Key.Week < t.Week).Sum(j => j.Value) };
            })],
        };
        return new(series, DriftAlarm.Follow(series, DriftAlarm.Alternative, s_settings));
    }

    private sealed record Silent(DriftSeries Series, IReadOnlyList<DriftEvidence> Evidence);
}
