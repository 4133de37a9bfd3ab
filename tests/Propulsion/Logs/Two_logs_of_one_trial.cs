using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

public class Two_logs_of_one_trial
{
    private static readonly SyntheticTrial s_trial = SyntheticTrial.Make();

    [Theory]
    [InlineData(0)]
    [InlineData(37)]
    [InlineData(-3600)]
    [InlineData(86_400 * 40)]
    public void The_offset_of_the_clocks_is_found_and_taken_out(int offset)
    {
        var joined = TwoLogs.Join(Track(), Rates(offset, 40, 260));
        var runs = RecordedRuns.Of(joined, PlateauRules.Usual, []).Runs;
        Assert.Equal(2, runs.Count);
        Assert.All(runs, run => Assert.Equal(SyntheticTrial.Rpm, run.Engine.RevolutionsPerMinute, 10.0));
        var taken = (joined.Rates[0].At - SyntheticTrial.Start).TotalSeconds - 40;
        Assert.InRange(taken, -1, 6); // the speed comes up with a time constant of 4 s
        var notice = joined.Notices.Single(n => n.Kind == LogNoticeKind.LogsJoined).Detail;
        Assert.Contains(offset == 0 ? "agree" : "taken out", notice, StringComparison.Ordinal);
    }

    [Fact]
    public void Logs_of_two_trials_are_not_forced_together()
    {
        var other = Logs.Lines([.. Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"{i},{3000 + ((i * 7919) % 1000)}")).Prepend("t_s,rpm")]);
        Assert.Contains("does not follow", TwoLogs.Join(Track(), other).Notices.Single(n => n.Kind == LogNoticeKind.LogsJoined).Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_of_seconds_has_no_clock_to_be_off()
    {
        var seconds = Logs.Lines([.. s_trial.Seconds.Take(40..260).Select((s, i) => FormattableString.Invariant($"{i},{s.Rpm:0}")).Prepend("t_s,rpm")]);
        Assert.Equal(LogTimes.SecondsOnly, seconds.Times);
        var joined = TwoLogs.Join(Track(), seconds);
        Assert.Equal("the times of the RPM log carry no date; the logs were laid over each other by the speed", joined.Notices[^1].Detail);
        Assert.Equal(2, RecordedRuns.Of(joined, PlateauRules.Usual, []).Runs.Count);
    }

    [Fact]
    public void One_that_follows_nothing_is_not_said_to_be_believed()
    {
        var other = Logs.Lines([.. Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"{i},{3000 + ((i * 7919) % 1000)}")).Prepend("t_s,rpm")]);
        Assert.Contains("could not be laid over each other", TwoLogs.Join(Track(), other).Notices[^1].Detail, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_log_is_no_trouble() =>
        Assert.Contains("hardly a reading", TwoLogs.Join(Track(), Logs.Read("")).Notices[^1].Detail, StringComparison.Ordinal);

    private static TrialLog Track() => Logs.Lines([.. s_trial.Seconds
        .Select(s => FormattableString.Invariant($"{s.At:yyyy-MM-ddTHH:mm:ssZ},{s.Knots:0.00},{s.Course:0.0}")).Prepend("time,speed_kn,course_deg")]);

    private static TrialLog Rates(int offset, int from, int to) => Logs.Lines([.. s_trial.Seconds.Take(from..to)
        .Select(s => FormattableString.Invariant($"{s.At.AddSeconds(offset):yyyy-MM-ddTHH:mm:ssZ},{s.Rpm:0}")).Prepend("time,rpm")]);
}
