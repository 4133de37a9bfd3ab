using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;
using FleetWake.Logbook.Strikes;
using FleetWake.Reports.Digests.Alert;
using FleetWake.Reports.Digests.Issue;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Faults.Tests;

/// <summary>Alerts and digests of docks on the whole program: each once, whoever ticks and however often.</summary>
public sealed class AlertTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_severe_strike_is_told_at_night_once_and_not_again_and_what_stood_before_is_not_told()
    {
        await using var mailbox = Mailbox.Open();
        var time = new ShiftedTime();
        time.Set(new DateTimeOffset(2026, 3, 5, 2, 0, 0, TimeSpan.FromHours(13))); // in the quiet hours
        var database = await postgres.NewDatabaseAsync("alerts", Ct);
        var both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct)));
        try
        {
            var (fleet, dock) = (both[0], new DockRecords());
            await fleet.SendAsync([.. dock.Outfit("tern", "Tern"), .. dock.Outfit("knot", "Knot")], Ct);
            await fleet.SendAsync([Strike(dock, "knot", "2026-02-20T10:00:00")], Ct);
            await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
            await SubscribeAsync(fleet, DigestNames.Alert, null);
            await RunningFleet.UntilAsync("the first look", async () => await CountAsync(database, "select count(*) from fleetwake.alerts_seen where cause = ''") == 1, Ct);

            await fleet.SendAsync([Strike(dock, "tern", "2026-03-05T01:30:00")], Ct);
            var told = await mailbox.NextAsync(Ct);
            Assert.Equal("Skerry Bay Hire: Tern, severe strike", told.Subject);
            Assert.DoesNotContain("Knot", told.TextBody, StringComparison.Ordinal);

            // Whoever asks, however often: the key stands.
            await Task.WhenAll(Enumerable.Range(0, 16).Select(i => both[i % 2].Service<AlertIssue>().TellDueAsync(Ct)));
            await Task.Delay(TimeSpan.FromSeconds(6), Ct);
            Assert.Equal(1, mailbox.Offered);
            Assert.Equal(1, await CountAsync(database, "select count(*) from fleetwake.mt_doc_told_cause where data ->> 'alert' <> 'before'"));
            Assert.Equal(1, await CountAsync(database, "select count(*) from fleetwake.mt_events where type = 'digest_issued' and data ->> 'digest' = 'alert'"));
        }
        finally
        {
            foreach (var fleet in both) await fleet.DisposeAsync();
        }
    }

    [Fact]
    public async Task What_arose_while_alerts_were_off_is_not_told_when_they_are_on_again()
    {
        await using var mailbox = Mailbox.Open();
        var time = ShiftedTime.From(new DateTimeOffset(2026, 3, 5, 12, 0, 0, TimeSpan.FromHours(13)));
        var database = await postgres.NewDatabaseAsync("alerts_off", Ct);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        var (dock, office) = (new DockRecords(), new DockRecords(2));
        await fleet.SendAsync([.. dock.Outfit("tern", "Tern"), .. dock.Outfit("knot", "Knot")], Ct);
        await SubscribeAsync(fleet, DigestNames.Alert, null);
        await RunningFleet.UntilAsync("the first look", async () => await BegunAsync() == 1, Ct);

        await fleet.SendAsync([new SetAlerts(office.At("2026-03-05T12:01:00"), 60, Off: true)], Ct, "office");
        await RunningFleet.UntilAsync("the pause", async () => await BegunAsync() == 0, Ct);
        await fleet.SendAsync([Strike(dock, "knot", "2026-03-05T12:02:00")], Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        time.Move(TimeSpan.FromDays(3));
        await fleet.SendAsync([new SetAlerts(office.At("2026-03-08T12:01:00"), 60)], Ct, "office");
        await RunningFleet.UntilAsync("the new beginning", async () => await BegunAsync() == 1, Ct);
        await fleet.SendAsync([Strike(dock, "tern", "2026-03-08T12:02:00")], Ct);
        var told = await mailbox.NextAsync(Ct);
        Assert.Equal("Skerry Bay Hire: Tern, severe strike", told.Subject);
        Assert.DoesNotContain("Knot", told.TextBody, StringComparison.Ordinal);

        Task<long> BegunAsync() => CountAsync(database, "select count(*) from fleetwake.alerts_seen where cause = ''");
    }

    [Fact]
    public async Task Readers_of_a_dock_have_their_docks_digest_by_its_own_clock_and_those_of_the_fleet_theirs()
    {
        await using var mailbox = Mailbox.Open();
        var time = new ShiftedTime();
        time.Set(new DateTimeOffset(2026, 3, 4, 12, 0, 0, TimeSpan.FromHours(13)));
        var database = await postgres.NewDatabaseAsync("docks", Ct);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        var dock = new DockRecords();
        await fleet.SendAsync([.. dock.Outfit("tern", "Tern")], Ct);
        await RunningFleet.UntilAsync("the finding", async () => await fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        var home = (await fleet.Service<FleetReading>().FindingAsync(RunningFleet.Operator, "tern", Ct))!.Finding.Registered!.Dock;
        await SubscribeAsync(fleet, DigestNames.WeeklyWear, home);
        await SubscribeAsync(fleet, DigestNames.WeeklyWear, null);
        var subjects = new[] { (await mailbox.NextAsync(Ct)).Subject, (await mailbox.NextAsync(Ct)).Subject };
        Assert.Contains(subjects, s => s!.StartsWith($"Skerry Bay Hire, {home}, week 10", StringComparison.Ordinal));
        Assert.Contains(subjects, s => s!.StartsWith("Skerry Bay Hire, week 10", StringComparison.Ordinal));
        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => fleet.Service<DigestIssue>().IssueDueAsync(Ct)));
        await Task.Delay(TimeSpan.FromSeconds(3), Ct);
        Assert.Equal(2, mailbox.Offered);
        Assert.Equal(1, await CountAsync(database, $"select count(*) from fleetwake.mt_events where type = 'digest_issued' and data ->> 'dock' = '{home}'"));
    }

    [Fact]
    public async Task A_schedule_in_another_zone_moves_the_hour_of_a_mail_and_not_the_day_of_the_boats_in_it()
    {
        await using var mailbox = Mailbox.Open();
        var time = ShiftedTime.From(new DateTimeOffset(2026, 3, 5, 7, 30, 0, TimeSpan.FromHours(13))); // the evening before at a dock on the Faroes
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("dock_days", Ct), mailbox.Settings, time, ct: Ct);
        var dock = new DockRecords();
        await fleet.SendAsync([Logbook.Boats.RegisterBoat.Example with { Entry = dock.At("2026-01-01T09:00:00"), Boat = "tern", Dock = "vagar", DockZone = "Atlantic/Faroe" }], Ct);
        await fleet.SendAsync([TimeDigest.Example with { Entry = dock.At("2026-03-01T09:00:00"), Digest = "due_list", Rhythm = "daily", Weekdays = null, Dock = "vagar", Zone = "Pacific/Auckland", SeasonFrom = null, SeasonUntil = null }], Ct, "office");
        var reading = fleet.Service<FleetReading>();
        await RunningFleet.UntilAsync("finding and schedule", async () => await reading.FindingAsync(RunningFleet.Operator, "tern", Ct) is not null && (await reading.OfficeAsync(RunningFleet.Operator, Ct)).Schedules.Set.Count == 1, Ct);
        await SubscribeAsync(fleet, DigestNames.DueList, "vagar");
        // The schedule holds from now on: what is due is still the week, by the clock of before.
        Assert.Contains("due list 2026-W10 - 2026-03-04", (await mailbox.NextAsync(Ct)).TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_another_operator_imports_keeps_an_operators_own_news_waiting_for_nothing()
    {
        await using var mailbox = Mailbox.Open();
        var time = new ShiftedTime();
        var database = await postgres.NewDatabaseAsync("import", Ct);
        await using var fleet = await RunningFleet.StartAsync(database, mailbox.Settings, time, ct: Ct);
        var (reading, dock) = (fleet.Service<FleetReading>(), new DockRecords());
        await fleet.SendAsync([.. dock.Outfit("tern", "Tern")], Ct);
        await RunningFleet.UntilAsync("the finding", async () => await reading.UpToDateAsync(Ct), Ct);

        // As far ahead as a large import: the daemon is long in reaching it.
        await using var source = NpgsqlDataSource.Create(database);
        await using var batch = source.CreateCommand(
            "insert into fleetwake.mt_streams select (jsonb_populate_record(s, '{\"tenant_id\": \"other\"}')).* from fleetwake.mt_streams s where id = 'boat/tern';"
            + "insert into fleetwake.mt_events select (jsonb_populate_record(e, jsonb_build_object('tenant_id', 'other', 'id', gen_random_uuid(), 'seq_id', e.seq_id + 1000000))).* from fleetwake.mt_events e"
            + " where stream_id = 'boat/tern' and version = 1");
        await batch.ExecuteNonQueryAsync(Ct);
        Assert.False(await reading.UpToDateAsync(Ct));
        Assert.True(await reading.UpToDateAsync(Ct, RunningFleet.Operator));
        Assert.Empty(await reading.BoatsBehindAsync(RunningFleet.Operator, Ct));
        Assert.False(await reading.UpToDateAsync(Ct, "other"));
        Assert.Equal(["tern"], await reading.BoatsBehindAsync("other", Ct));
    }

    private static ReportStrike Strike(DockRecords dock, string boat, string at) => new(dock.At(at), boat, "single", "rock", "bent", null);

    private static async Task SubscribeAsync(RunningFleet fleet, string digest, string? dock)
    {
        var operators = fleet.Service<FleetOperators>();
        await operators.SubscribeAsync((await operators.FindAsync(RunningFleet.Operator, Ct))!, $"reader{dock}@skerry-bay.example", digest, Ct, dock);
    }

    private static async Task<long> CountAsync(string database, string sql)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand(sql);
        return (long)(await command.ExecuteScalarAsync(Ct))!;
    }
}
