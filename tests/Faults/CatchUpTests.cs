using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests.Issue;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using MimeKit;
using Npgsql;

namespace FleetWake.Faults.Tests;

/// <summary>Nothing ran for weeks, or a clock jumped: each period has one digest at the most, and what was missed is on record.</summary>
public sealed class CatchUpTests(PostgresFixture postgres)
{
    private static readonly DateTimeOffset Wednesday = new(2026, 3, 4, 12, 0, 0, TimeSpan.FromHours(13)); // 2026-W10

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_four_weeks_of_downtime_the_newest_digest_goes_out_once_and_the_record_says_which_were_passed_over()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        time.Move(TimeSpan.FromDays(28));
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        Assert.Contains("2026-W14", Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);
        await NoMoreThanAsync(2, fleet);
        Assert.Equal("2026-W11 2026-W12 2026-W13", await PeriodsAsync(database, "digest_passed_over"));
        Assert.Equal("2026-W10 2026-W14", await PeriodsAsync(database, "digest_issued"));
    }

    [Fact]
    public async Task What_is_recorded_on_the_day_of_an_edition_after_it_went_out_is_told_in_the_next_one()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        time.Move(TimeSpan.FromHours(3));
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        await fleet.SendAsync([new Logbook.Strikes.ReportStrike(new DockRecords(2).At("2026-03-04T12:30:00"), "tern", "single", "rock", "bent", null)], Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);

        // What the command writes is what goes out: with the operator's own prices.
        await fleet.SendAsync([new SetPrice(new DockRecords(3).At("2026-03-04T13:00:00"), "hire_day", 140m, "NZD")], Ct, "office");
        await RunningFleet.UntilAsync("the price", async () => (await fleet.Service<FleetReading>().OfficeAsync(RunningFleet.Operator, Ct)).Record.Prices.Count == 1, Ct);
        var folder = Directory.CreateTempSubdirectory("fleetwake-digest-test-").FullName;
        var (exit, said) = await FleetProgram.RunAsync(database, Ct, "digest", "--operator", RunningFleet.Operator, "--date", "2026-03-04", "--out", folder);
        Assert.True(exit == 0, said);
        Assert.Contains("1 boats", said, StringComparison.Ordinal);
        Assert.Contains("140.00\u00A0NZD of hire a day", (await MimeMessage.LoadAsync(Directory.GetFiles(folder, "*.eml").Single(), Ct)).TextBody, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);

        time.Move(TimeSpan.FromDays(7));
        Assert.Contains("Struck: Tern (bent, 2026-03-04).", (await mailbox.NextAsync(Ct)).TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_all_are_wanted_each_missed_digest_goes_out_once_oldest_first()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        time.Move(TimeSpan.FromDays(28));
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, catchUp: MissedRule.All, ct: Ct);
        foreach (var week in (string[])["2026-W11", "2026-W12", "2026-W13", "2026-W14"])
            Assert.Contains(week, Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);
        await NoMoreThanAsync(5, fleet);
        Assert.Null(await PeriodsAsync(database, "digest_passed_over"));
    }

    [Fact]
    public async Task A_clock_that_jumps_a_year_ahead_and_back_neither_doubles_nor_loses_the_digests_of_the_weeks_that_follow()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        time.Move(TimeSpan.FromDays(365));
        await mailbox.NextAsync(Ct);
        time.Move(TimeSpan.FromDays(-365));
        time.Move(TimeSpan.FromHours(1));
        await NoMoreThanAsync(2, fleet);
        time.Move(TimeSpan.FromHours(-1));
        await NoMoreThanAsync(2, fleet);
        time.Move(TimeSpan.FromDays(7));
        Assert.Contains("2026-W11", Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_each_is_wanted_those_that_a_clock_ahead_sent_before_their_time_go_out_when_they_come()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, catchUp: MissedRule.All, ct: Ct);
        time.Move(TimeSpan.FromDays(28));
        var early = new List<MimeMessage>();
        while (early.Count < 4) early.Add(await mailbox.NextAsync(Ct));
        time.Move(TimeSpan.FromDays(-28));
        await NoMoreThanAsync(5, fleet);

        time.Move(TimeSpan.FromDays(7));
        var again = await mailbox.NextAsync(Ct);
        Assert.Contains("2026-W11", Text(again), StringComparison.Ordinal);
        Assert.DoesNotContain(again.MessageId, early.Select(m => m.MessageId)); // else a mailbox may show it once
        await NoMoreThanAsync(6, fleet);
        Assert.Equal("2026-W10 2026-W11 2026-W11~2 2026-W12 2026-W13 2026-W14", await PeriodsAsync(database, "digest_issued"));
    }

    /// <summary>Faults row 10, on the whole program: two nodes whose clocks are a quarter of an hour apart, first one ahead, then the other.</summary>
    [Fact]
    public async Task Two_nodes_whose_clocks_are_apart_issue_each_period_once()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        var (behind, ahead) = (ShiftedTime.From(time.GetUtcNow()), ShiftedTime.From(time.GetUtcNow()));
        await using var one = await RunningFleet.StartAsync(database, mailbox.Settings, behind, ct: Ct);
        await using var other = await RunningFleet.StartAsync(database, mailbox.Settings, ahead, ct: Ct);
        var monday = new DateTimeOffset(2026, 3, 9, 7, 0, 0, TimeSpan.FromHours(13));
        var digests = 1;
        foreach (var week in (string[])["2026-W11", "2026-W12"])
        {
            behind.Set(monday.AddMinutes(-7));
            ahead.Set(monday.AddMinutes(8));
            Assert.Contains(week, Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);
            await NoMoreThanAsync(++digests, one, other); // the one ahead has it behind it, for the other it is not due yet
            behind.Set(monday.AddMinutes(1));
            ahead.Set(monday.AddMinutes(16));
            await NoMoreThanAsync(digests, one, other);
            (behind, ahead) = (ahead, behind);
            monday = monday.AddDays(7);
        }

        Assert.Equal("2026-W10 2026-W11 2026-W12", await PeriodsAsync(database, "digest_issued"));
        Assert.Null(await PeriodsAsync(database, "digest_passed_over"));
    }

    [Fact]
    public async Task A_schedule_that_moves_to_a_later_day_sends_no_digest_of_a_week_before()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        time.Move(TimeSpan.FromDays(21)); // W10 went out, W11 and W12 are passed over with W13
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        Assert.Contains("2026-W13", Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);

        var dock = new DockRecords(2);
        await fleet.SendAsync([new SetSchedule(dock.At("2026-03-25T11:00:00"), "weekly_wear", "friday", "06:00")], Ct, "office");
        await RunningFleet.UntilAsync("the schedule", async () => ScheduleBook.Of(await fleet.Service<FleetReading>().OfficeLogAsync(RunningFleet.Operator, Ct)).Set is [{ Weekdays: [DayOfWeek.Friday] }], Ct);
        await NoMoreThanAsync(2, fleet); // W12 is the newest due now
        time.Move(TimeSpan.FromDays(3)); // Saturday: W13 is due again
        await NoMoreThanAsync(2, fleet);
        Assert.Equal("2026-W11 2026-W12", await PeriodsAsync(database, "digest_passed_over"));

        time.Move(TimeSpan.FromDays(7));
        Assert.Contains("2026-W14", Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);
        Assert.Equal("2026-W10 2026-W13 2026-W14", await PeriodsAsync(database, "digest_issued"));
    }

    [Fact]
    public async Task However_often_and_wherever_the_tick_comes_a_period_has_one_digest()
    {
        await using var mailbox = Mailbox.Open();
        var (database, time) = await OneDigestAsync(mailbox);
        time.Move(TimeSpan.FromDays(7));
        var both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct)));
        try
        {
            await Task.WhenAll(Enumerable.Range(0, 16).Select(i => both[i % 2].Service<DigestIssue>().IssueDueAsync(Ct)));
            await mailbox.NextAsync(Ct);
            await NoMoreThanAsync(2, both);
            Assert.Equal("2026-W10 2026-W11", await PeriodsAsync(database, "digest_issued"));
        }
        finally
        {
            foreach (var fleet in both) await fleet.DisposeAsync();
        }
    }

    /// <summary>A fleet with one boat whose digest of 2026-W10 went out, stopped since.</summary>
    private async Task<(string Database, ShiftedTime Time)> OneDigestAsync(Mailbox mailbox)
    {
        var time = new ShiftedTime();
        time.Set(Wednesday);
        var database = await postgres.NewDatabaseAsync("catchup", Ct);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        await fleet.SendAsync(new DockRecords().Outfit("tern", "Tern"), Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        await fleet.SubscribeAsync("manager@skerry-bay.example", Ct);
        Assert.Contains("2026-W10", Text(await mailbox.NextAsync(Ct)), StringComparison.Ordinal);
        // Stopped between the server's word and our note of it, the mail would rightly go out again.
        await RunningFleet.UntilAsync("the note that it was sent", async () => await CountAsync(database, "mail_sent") == 1, Ct);
        return (database, time);
    }

    /// <summary>
    /// What a tick does is done on each node by the clock it has now, and no more messages were planned than these: a digest queues its own in one
    /// transaction, so that nobody has to wait for one that does not come.
    /// </summary>
    private static async Task NoMoreThanAsync(int messages, params RunningFleet[] nodes)
    {
        foreach (var node in nodes)
        {
            await RunningFleet.UntilAsync("the findings", async () => await node.Service<FleetReading>().UpToDateAsync(Ct), Ct); // until then it waits
            for (var i = 0; i < 2; i++) await node.Service<DigestIssue>().IssueDueAsync(Ct);
        }

        Assert.Equal(messages, await CountAsync(nodes[0].Database, "mail_planned"));
    }

    private static string Text(MimeMessage message) => $"{message.Subject}\n{message.TextBody}";

    private static async Task<long> CountAsync(string database, string fact)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand($"select count(*) from fleetwake.mt_events where type = '{fact}'");
        return (long)(await command.ExecuteScalarAsync(Ct))!;
    }

    private static async Task<string?> PeriodsAsync(string database, string fact)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand($"select string_agg(data ->> 'period', ' ' order by data ->> 'period') from fleetwake.mt_events where type = '{fact}'");
        return await command.ExecuteScalarAsync(Ct) as string;
    }
}
