using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

public class A_clock_that_jumps
{
    private static readonly SyntheticTrial s_trial = SyntheticTrial.Make();

    [Fact]
    public void Back_by_an_hour_is_noticed_and_the_order_of_the_lines_is_kept()
    {
        var log = Shifted(second => second < 170 ? 0 : -3600); // while turning
        Assert.True(log.Says(LogNoticeKind.ClockWentBack));
        Assert.Equal(s_trial.Seconds.Select(s => s.Rpm), log.Rates.Select(sample => sample.Engine.RevolutionsPerMinute));
        Assert.Equal(2, RecordedRuns.Of(log, PlateauRules.Usual, []).Runs.Count);
    }

    [Fact]
    public void Ahead_by_years_as_when_a_receiver_learns_its_date_is_noticed()
    {
        var log = Shifted(second => second < 30 ? -200_000_000 : 0);
        Assert.True(log.Says(LogNoticeKind.ClockJumpedAhead));
        Assert.True(log.Rates[^1].At - log.Rates[0].At < TimeSpan.FromMinutes(10));
    }

    [Fact]
    public void No_run_spans_a_jump()
    {
        var log = Shifted(second => second < 100 ? 0 : -3600); // in the midst of the run out
        var runs = RecordedRuns.Of(log, PlateauRules.Usual, []).Runs;
        Assert.Equal(3, runs.Count);
        Assert.All(runs, run => Assert.True(run.Held < TimeSpan.FromSeconds(76)));
    }

    [Fact]
    public void A_second_or_two_out_of_order_between_devices_is_no_jump()
    {
        var log = Shifted(second => second % 7 == 0 ? -2 : 0);
        Assert.False(log.Says(LogNoticeKind.ClockWentBack));
        Assert.Equal(2, RecordedRuns.Of(log, PlateauRules.Usual, []).Runs.Count);
    }

    [Fact]
    public void A_constant_offset_changes_no_run()
    {
        var right = RecordedRuns.Of(Shifted(_ => 0), PlateauRules.Usual, []).Runs;
        var off = RecordedRuns.Of(Shifted(_ => -86_400 * 3000), PlateauRules.Usual, []).Runs;
        Assert.Equal(right.Select(run => run with { Began = null }), off.Select(run => run with { Began = null }));
    }

    [Fact]
    public void A_year_that_no_log_has_is_a_broken_field() => Assert.Contains(
        "outside 1970 to 2199", Assert.Single(Logs.Lines("time,rpm", "9999-12-31T23:59:59Z,5000").Dropped).Reason, StringComparison.Ordinal);

    private static TrialLog Shifted(Func<int, double> seconds) => Logs.Lines([.. s_trial.Seconds
        .Select((s, i) => FormattableString.Invariant($"{s.At.AddSeconds(seconds(i)):yyyy-MM-ddTHH:mm:ssZ},{s.Rpm:0},{s.Knots:0.00},{s.Course:0.0}"))
        .Prepend("time,rpm,speed_kn,course_deg")]);
}
