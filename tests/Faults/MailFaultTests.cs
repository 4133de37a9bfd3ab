using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Reports.Mail;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;
using SmtpServer.Protocol;

namespace FleetWake.Faults.Tests;

/// <summary>Mail servers and templates that fail: each message arrives once or its fate is written down.</summary>
public sealed class MailFaultTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_mail_server_that_asks_to_come_back_later_gets_the_message_once_later()
    {
        await using var mailbox = Mailbox.Open();
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.TransactionFailed - 103, "try again later")); // 451
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "deferred");
        await HurryAsync(fleet);
        var message = await mailbox.NextAsync(Ct);
        await StateAsync(fleet, "sent");
        Assert.Equal(2, mailbox.Offered);
        Assert.Equal(["mail_planned", "mail_composed", "mail_attempted", "mail_deferred", "mail_attempted", "mail_sent"], await LedgerAsync(fleet));
        Assert.NotNull(message.MessageId);
    }

    [Fact]
    public async Task Nothing_is_mailed_before_there_is_a_boat_and_the_first_digest_comes_with_it()
    {
        await using var mailbox = Mailbox.Open();
        await using var fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("nothing", Ct),
            mailbox.Settings,
            ct: Ct);
        await SubscribeAsync(fleet);
        await Task.Delay(TimeSpan.FromSeconds(3), Ct);
        Assert.Equal(0, mailbox.Offered);
        await fleet.SendAsync(new DockRecords().Outfit("tern", "Tern"), Ct);
        Assert.Contains("Tern", (await mailbox.NextAsync(Ct)).TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_downtime_the_digest_waits_for_the_findings_and_tells_of_the_strike_that_came_meanwhile()
    {
        await using var mailbox = Mailbox.Open();
        var mail = mailbox.Settings;
        var database = await postgres.NewDatabaseAsync("downtime", Ct);
        var dock = new DockRecords();
        await using (var before = await RunningFleet.StartAsync(database, mail, ct: Ct))
        {
            await before.SendAsync(dock.Outfit("tern", "Tern"), Ct);
            await RunningFleet.UntilAsync("the finding", async () => await before.Service<Store.Histories.FleetReading>().UpToDateAsync(Ct), Ct);
        }

        await using (var fleet = await FleetDatabase.OnAsync(database, Ct))
        {
            var strike = new ReportStrike(dock.At("2026-03-01T10:00:00"), "tern", "single", "rock", "bent");
            await new Recorder(fleet.Store).TakeAsync(RunningFleet.Operator, RecordKind.Find(ReportStrike.Kind)!, strike, new Arrival("dock-1", TimeProvider.System.GetUtcNow(), null), Ct);
            var operators = new FleetOperators(fleet.Store, TimeProvider.System);
            await operators.SubscribeAsync((await operators.FindAsync(RunningFleet.Operator, Ct))!, "manager@skerry-bay.example", Reports.Digests.WeeklyWear.Digest, Ct);
        }

        await using var after = await RunningFleet.StartAsync(database, mail, ct: Ct);
        Assert.Contains("not for hire", (await mailbox.NextAsync(Ct)).TextBody, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_refusal_for_good_is_not_tried_again()
    {
        await using var mailbox = Mailbox.Open();
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such person"));
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "refused");
        await HurryAsync(fleet);
        await Task.Delay(TimeSpan.FromSeconds(3), Ct);
        Assert.Equal(1, mailbox.Offered);
    }

    [Fact]
    public async Task A_mail_server_that_is_down_is_tried_again()
    {
        var mailbox = Mailbox.Open();
        var port = mailbox.Port;
        await mailbox.DisposeAsync();
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "deferred");
        await using var back = Mailbox.Open(port);
        await HurryAsync(fleet);
        await back.NextAsync(Ct);
        await StateAsync(fleet, "sent");
    }

    [Fact]
    public async Task A_sender_that_died_in_the_middle_leaves_an_unclear_attempt_and_the_message_goes_again_with_its_id()
    {
        await using var mailbox = Mailbox.Open();
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.TransactionFailed - 103, "try again later"));
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "deferred");

        // As a kill in the middle of an attempt leaves the row: in sending, its lease run out.
        await RunAsync(fleet, "update fleetwake.outgoing_mail set state = 'sending', not_before = now() - interval '1 minute'");
        var message = await mailbox.NextAsync(Ct);
        await StateAsync(fleet, "sent");
        Assert.Equal(message.MessageId, await AskAsync(fleet, "select data ->> 'messageId' from fleetwake.mt_events where type = 'mail_planned'"));
        Assert.Contains("mail_unclear", await LedgerAsync(fleet));
    }

    [Fact]
    public async Task Attempts_that_were_deferred_do_not_count_as_unclear()
    {
        await using var mailbox = Mailbox.Open();
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.TransactionFailed - 103, "try again later"));
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "deferred");
        await RunAsync(fleet, "update fleetwake.outgoing_mail set attempts = 9, state = 'sending', not_before = now() - interval '1 minute'");
        await mailbox.NextAsync(Ct);
        await StateAsync(fleet, "sent");
    }

    [Fact]
    public async Task A_message_that_waits_for_a_moment_a_clock_ran_ahead_to_goes_out_now()
    {
        await using var mailbox = Mailbox.Open();
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.TransactionFailed - 103, "try again later"));
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "deferred");
        await RunAsync(fleet, "update fleetwake.outgoing_mail set not_before = now() + interval '5 hours'"); // a wait, it may be
        await Task.Delay(TimeSpan.FromSeconds(3), Ct);
        Assert.Equal(1, mailbox.Offered);
        await RunAsync(fleet, "update fleetwake.outgoing_mail set not_before = now() + interval '1 year'");
        await mailbox.NextAsync(Ct);
        await StateAsync(fleet, "sent");
    }

    [Fact]
    public async Task Check_tells_of_messages_refused_in_the_last_week_and_not_of_those_whose_reader_left()
    {
        await using var mailbox = Mailbox.Open();
        mailbox.Answers.Enqueue(new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "no such person"));
        await using var fleet = await FleetAsync(mailbox);
        await SubscribeAsync(fleet);
        await StateAsync(fleet, "refused");
        Assert.Matches("(?m)^WRONG mail .*1 refused in the last week", await CheckAsync());
        await RunAsync(fleet, "update fleetwake.outgoing_mail set settled_at = now() - interval '8 days'");
        Assert.Matches("(?m)^ok    mail .*1 refused", await CheckAsync());
        await RunAsync(fleet, "update fleetwake.outgoing_mail set settled_at = now(), last_error = 'unsubscribed'");
        Assert.Matches("(?m)^ok    mail .*1 refused", await CheckAsync());

        async Task<string> CheckAsync() => (await FleetProgram.RunAsync(fleet.Database, Ct, "check")).Output;
    }

    [Fact]
    public async Task A_template_that_fails_does_not_keep_the_digest_from_going_out_in_a_plain_form_that_says_so()
    {
        var templates = Directory.CreateTempSubdirectory("fleetwake-broken-templates-").FullName;
        await File.WriteAllTextAsync(Path.Combine(templates, "weekly-wear.html.liquid"), "{% for boat in %}", Ct);
        await File.WriteAllTextAsync(Path.Combine(templates, "weekly-wear.txt.liquid"), "{{ no_such_thing }}", Ct);
        await using var mailbox = Mailbox.Open();
        await using var fleet = await FleetAsync(mailbox, templates);
        var dock = new DockRecords();
        await fleet.SendAsync([.. dock.Outfit("tern", "Tern"), dock.Trial("tern", "2026-02-01T10:00:00", 6200, 120)], Ct);
        await RunningFleet.UntilAsync("the finding", async () => (await fleet.Http.GetAsync("/api/boats/tern/finding", Ct)).IsSuccessStatusCode, Ct);
        await RunningFleet.UntilAsync("everything assessed", async () => await fleet.Service<Store.Histories.FleetReading>().UpToDateAsync(Ct), Ct);
        await SubscribeAsync(fleet);
        var message = await mailbox.NextAsync(Ct);
        Assert.Contains("weekly-wear.html.liquid", message.HtmlBody, StringComparison.Ordinal);
        Assert.Contains("Over-revving", message.HtmlBody, StringComparison.Ordinal);
        Assert.Contains("Over-revving", message.TextBody, StringComparison.Ordinal);
        Directory.Delete(templates, recursive: true);
    }

    private async Task<RunningFleet> FleetAsync(Mailbox mailbox, string? templates = null)
    {
        var fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("mail", Ct),
            mailbox.Settings,
            templates: templates,
            ct: Ct);
        await fleet.SendAsync(new DockRecords(9).Outfit("skua", "Skua"), Ct);
        return fleet;
    }

    private static Task SubscribeAsync(RunningFleet fleet) => fleet.SubscribeAsync("manager@skerry-bay.example", Ct);

    private static Task StateAsync(RunningFleet fleet, string state) =>
        RunningFleet.UntilAsync($"a message that is {state}", async () => await AskAsync(fleet, "select min(state) from fleetwake.outgoing_mail") as string == state, Ct);

    /// <summary>Makes what waits for its next attempt due now.</summary>
    private static Task HurryAsync(RunningFleet fleet) => RunAsync(fleet, "update fleetwake.outgoing_mail set not_before = now()");

    private static async Task<string[]> LedgerAsync(RunningFleet fleet) =>
        (string[])(await AskAsync(fleet, "select array_agg(type::text order by seq_id) from fleetwake.mt_events where stream_id like 'mail/%'"))!;

    private static async Task RunAsync(RunningFleet fleet, string sql) => await AskAsync(fleet, sql);

    private static async Task<object?> AskAsync(RunningFleet fleet, string sql)
    {
        await using var source = NpgsqlDataSource.Create(fleet.Database);
        await using var command = source.CreateCommand(sql);
        return await command.ExecuteScalarAsync(Ct);
    }
}
