using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>Against trials whose truth is known; see <see cref="SyntheticTrial"/>. Tolerances are four standard errors of the noise put in.</summary>
public class Runs_in_a_recording
{
    private static readonly SyntheticTrial s_trial = SyntheticTrial.Make();

    public static TheoryData<string> Formats => ["nmea", "signalk", "csv"];

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_run_out_and_the_run_back_are_found(string format)
    {
        var found = Runs(Logs.Lines([.. format switch { "nmea" => s_trial.Nmea(), "signalk" => s_trial.SignalK(), _ => s_trial.Csv() }]));
        Assert.Equal(2, found.Runs.Count);
        Assert.Empty(found.Remarks);
        Assert.All(found.Runs, run => Assert.Equal(SyntheticTrial.Rpm, run.Engine.RevolutionsPerMinute, 8.0));
        Assert.Equal(SyntheticTrial.Knots + SyntheticTrial.Current, found.Runs[0].Speed!.Value.Knots, 0.15);
        Assert.Equal(SyntheticTrial.Knots - SyntheticTrial.Current, found.Runs[1].Speed!.Value.Knots, 0.15);
        Assert.Equal(SyntheticTrial.Line, found.Runs[0].HeadingDegrees, 1.5);
        Assert.Equal(SyntheticTrial.Line + 180, found.Runs[1].HeadingDegrees, 1.5);
        Assert.All(found.Runs, run => Assert.InRange(run.Held!.Value.TotalSeconds, 55, 75));
    }

    /// <summary>Over a hundred seeds the two-way means scatter as the noise put in says and stand at the truth: computed here.</summary>
    [Fact]
    public void A_hundred_trials_stand_at_the_truth_on_the_mean()
    {
        var means = Enumerable.Range(1, 100).Select(seed => Runs(Logs.Lines([.. SyntheticTrial.Make(knotsNoise: 0.35, seed: seed).Csv()])).Runs)
            .Select(runs => (
                runs.Count,
                Rpm: runs.Average(run => run.Engine.RevolutionsPerMinute),
                TwoWayMean.Of([.. runs.Select(run => new TimedRun(run.Speed!.Value, run.HeadingDegrees))]).Speed.Knots)).ToArray();
        Assert.True(means.Count(mean => mean.Count == 2) >= 95, $"{means.Count(mean => mean.Count == 2)} of 100 had two runs");
        Assert.Equal(SyntheticTrial.Rpm, means.Average(mean => mean.Rpm), 1.5);
        Assert.Equal(SyntheticTrial.Knots, means.Average(mean => mean.Knots), 0.03); // a run begins at 99 % of its speed: a tenth of a per cent low
        Assert.All(means, mean => Assert.Equal(SyntheticTrial.Knots, mean.Knots, 0.2));
    }

    [Fact]
    public void Their_scatter_is_that_of_the_instruments()
    {
        var run = Runs(Logs.Lines([.. s_trial.Csv()])).Runs[0];
        Assert.InRange(run.RpmScatter!.Value, 9, 16); // 12 rev/min put in
        Assert.InRange(run.SpeedScatterKnots!.Value, 0.18, 0.33); // 0.25 kn put in
    }

    [Fact]
    public void The_idling_is_no_run_and_is_shown_as_left_out() =>
        Assert.All(Runs(Logs.Lines([.. s_trial.Csv()])).LeftOut, plateau => Assert.False(plateau.WideOpen));

    [Fact]
    public void A_track_of_positions_gives_the_same_speeds_and_needs_the_RPM()
    {
        var log = Logs.Read(s_trial.Gpx());
        Assert.Empty(Runs(log).Runs);
        Assert.Contains("has no RPM", Assert.Single(Runs(log).Remarks), StringComparison.Ordinal);
        var found = Runs(log, 5600);
        Assert.Equal(2, found.Runs.Count);
        Assert.Equal(SyntheticTrial.Knots + SyntheticTrial.Current, found.Runs[0].Speed!.Value.Knots, 0.2);
        Assert.Equal(SyntheticTrial.Knots - SyntheticTrial.Current, found.Runs[1].Speed!.Value.Knots, 0.2);
        Assert.Equal([5600, 5580], Runs(log, 5600, 5580).Runs.Select(run => run.Engine.RevolutionsPerMinute));
        Assert.Throws<ArgumentException>("given", () => Runs(log, 5600, 5580, 5590));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(179)]
    [InlineData(359)]
    public void North_is_no_edge(double line)
    {
        var found = Runs(Logs.Lines([.. SyntheticTrial.Make(line: line).Csv()]));
        Assert.Equal(2, found.Runs.Count);
        Assert.Equal(0, Math.IEEERemainder(found.Runs[0].HeadingDegrees - line, 360), 1.5);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Half_a_knot_of_noise_and_a_tachometer_of_fifty_steps_are_borne(int seed)
    {
        var found = Runs(Logs.Lines([.. SyntheticTrial.Make(rpmNoise: 20, knotsNoise: 0.5, step: 50, seed: seed).Csv()]));
        var mean = found.Runs.Average(run => run.Speed!.Value.Knots);
        Assert.Contains(found.Runs, run => Math.Abs(run.HeadingDegrees - 40) < 5);
        Assert.Contains(found.Runs, run => Math.Abs(run.HeadingDegrees - 220) < 5);
        Assert.Equal(30, mean, 0.6);
        Assert.All(found.Runs, run => Assert.Equal(SyntheticTrial.Rpm, run.Engine.RevolutionsPerMinute, 25.0));
    }

    [Fact]
    public void A_log_written_every_ten_seconds_is_enough()
    {
        var found = Runs(Logs.Lines([.. s_trial.Csv().Where((_, i) => i % 10 == 0)]));
        Assert.Equal(2, found.Runs.Count);
        Assert.Equal(SyntheticTrial.Knots + SyntheticTrial.Current, found.Runs[0].Speed!.Value.Knots, 0.5); // 4 x 0.25 kn over the root of four readings
        Assert.All(found.Runs, run => Assert.Equal(SyntheticTrial.Rpm, run.Engine.RevolutionsPerMinute, 30.0));
    }

    [Fact]
    public void Ten_readings_a_second_are_not_too_many()
    {
        var random = new Random(5);
        var rows = s_trial.Seconds.SelectMany(s => Enumerable.Range(0, 10).Select(i => FormattableString.Invariant(
            $"{(s.At - SyntheticTrial.Start).TotalSeconds + (i / 10.0)},{s.Rpm + random.Next(-20, 21)},{s.Knots + (random.NextDouble() - 0.5):0.00},{s.Course:0.0}")));
        var found = Runs(Logs.Lines([.. rows.Prepend("t_s,rpm,speed_kn,course_deg")]));
        Assert.Equal(2, found.Runs.Count);
        Assert.Equal(SyntheticTrial.Knots - SyntheticTrial.Current, found.Runs[1].Speed!.Value.Knots, 0.15);
    }

    [Fact]
    public void A_wild_reading_ends_no_run_and_moves_no_mean()
    {
        var rows = s_trial.Csv().ToArray();
        var cells = rows[100].Split(',');
        rows[100] = $"{cells[0]},9900,{cells[2]},{cells[3]}";
        var found = Runs(Logs.Lines(rows));
        Assert.Equal(2, found.Runs.Count);
        Assert.Equal(SyntheticTrial.Rpm, found.Runs[0].Engine.RevolutionsPerMinute, 8.0);
    }

    [Fact]
    public void A_gap_ends_a_run_and_is_noticed()
    {
        // Twenty seconds are missing in the midst of the run out.
        var log = Logs.Lines([.. s_trial.Csv().Where((_, i) => i is < 95 or > 115)]);
        Assert.True(log.Says(LogNoticeKind.Gaps));
        Assert.DoesNotContain(Runs(log).Runs, run => run.Held > TimeSpan.FromSeconds(76));
        Assert.Equal(3, Runs(log).Runs.Count);
    }

    [Fact]
    public void A_turn_at_full_throttle_parts_two_runs()
    {
        var rows = Enumerable.Range(0, 130).Select(i => FormattableString.Invariant(
            $"{i},5600,{(i is > 60 and < 70 ? 28 : 30)},{Math.Clamp((i - 60) * 18, 0, 180)}"));
        var found = Runs(Logs.Lines([.. rows.Prepend("t_s,rpm,speed_kn,course_deg")]));
        Assert.Equal([0, 180], found.Runs.Select(run => Math.Round(run.HeadingDegrees)));
    }

    [Fact]
    public void A_run_across_the_line_of_the_others_is_left_out_and_that_is_said()
    {
        var rows = new[] { 0, 90, 180 }.SelectMany((course, leg) => Enumerable.Range(0, 40).Select(i => FormattableString.Invariant(
            $"{(leg * 100) + i},5600,30,{course}")));
        var found = Runs(Logs.Lines([.. rows.Prepend("t_s,rpm,speed_kn,course_deg")]));
        Assert.Equal([0, 180], found.Runs.Select(run => Math.Round(run.HeadingDegrees)));
        Assert.StartsWith("1 of 3 runs left out", Assert.Single(found.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_held_there_are_no_runs_and_that_is_said()
    {
        var rows = Enumerable.Range(0, 100).Select(i => FormattableString.Invariant($"{i},{3000 + (i * 20)},{20 + (i * 0.1)},40"));
        var found = Runs(Logs.Lines([.. rows.Prepend("t_s,rpm,speed_kn,course_deg")]));
        Assert.Empty(found.Runs);
        Assert.Contains("nowhere did RPM, speed and course hold", Assert.Single(found.Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_outside_its_range_is_named() => Assert.Throws<ArgumentOutOfRangeException>(
        "RpmRange", () => Plateaus.Find(Logs.Lines([.. s_trial.Csv()]), new PlateauRules { RpmRange = double.NaN }));

    private static RecordedRuns Runs(TrialLog log, params double[] rpm) =>
        RecordedRuns.Of(log, PlateauRules.Usual, [.. rpm.Select(EngineRate.FromRevolutionsPerMinute)]);
}
