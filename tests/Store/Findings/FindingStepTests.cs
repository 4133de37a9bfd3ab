using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using JasperFx.Events.Daemon;
using Marten.Events;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetWake.Store.Tests.Findings;

public sealed partial class FindingStepTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tenant = "skerry-bay";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private static readonly DateTimeOffset Now = new(2026, 5, 4, 9, 0, 0, TimeSpan.Zero);
    private FleetDatabase database = null!;
    private Recorder recorder = null!;
    private FindingStep step = null!;
    private FleetReading reading = null!;
    private IProjectionDaemon daemon = null!;
    private int entries;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("findings"));
        recorder = new Recorder(database.Store);
        step = new FindingStep(database.Store, database.Source, TimeProvider.System, NullLogger<FindingStep>.Instance);
        reading = new FleetReading(database.Store, database.Source);
        daemon = await database.Store.BuildProjectionDaemonAsync();
        await daemon.StartAllAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await daemon.StopAllAsync();
        daemon.Dispose();
        await database.DisposeAsync();
    }

    [Fact]
    public async Task A_boats_records_become_its_finding()
    {
        await Outfit("tern", "E-1", "P-1");
        for (var i = 0; i < 5; i++) await Take(Trial("tern", $"2026-0{i / 2 + 1}-{(i % 2 * 14) + 3:00}T10:00:00", 5600 + (20 * i), 100 + (25 * i)));
        await Settle();

        var stored = await reading.FindingAsync(Tenant, "tern", Ct);
        var mounting = Assert.Single(stored!.Finding.Positions).Mounting!;
        Assert.Equal(5, mounting.Trials.Count);
        Assert.InRange(mounting.Drift!.Value, 15, 80); // 20 RPM in 25 h, and no fleet wears like that
        Assert.Equal(BandExitState.Forecast, mounting.Exit.State);
        Assert.InRange(mounting.Exit.HoursFromLastTrial!.Value, 400, 2000); // 320 RPM to go
        Assert.Equal((0, 0), (stored.PriorVersion, stored.Finding.PriorNumber)); // nobody has fitted its fleet yet
        Assert.Equal(stored.Id, (await reading.FindingsAsync(Tenant, Ct)).Single().Id);
    }

    [Fact]
    public async Task A_repitch_marks_the_boat_that_carries_the_prop()
    {
        await Outfit("gull", "E-2", "P-2");
        await Settle();
        await Take(new RepitchProp(At("2026-02-01T09:00:00"), "P-2", 14.5));
        await Settle();
        var finding = (await reading.FindingAsync(Tenant, "gull", Ct))!.Finding;
        Assert.Equal(14.5, finding.Positions[0].Mounting!.Prop.PitchInches);
    }

    [Fact]
    public async Task Taking_a_mounting_back_ends_the_question_on_both_boats()
    {
        await Outfit("skua", "E-3", "P-3");
        await Outfit("knot", "E-4", "P-4");
        var wrong = new MountProp(At("2026-02-01T09:00:00"), "knot", "single", "P-3");
        await Take(wrong);
        await Settle();
        Assert.Contains((await reading.FindingAsync(Tenant, "skua", Ct))!.Finding.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);

        await Take(new Retract(At("2026-02-02T09:00:00"), wrong.Entry!.Id, "wrong_subject", Boat: "knot"));
        await Settle();
        Assert.Empty((await reading.FindingAsync(Tenant, "skua", Ct))!.Finding.Contradictions);
        Assert.Empty((await reading.FindingAsync(Tenant, "knot", Ct))!.Finding.Contradictions);
    }

    [Fact]
    public async Task Findings_are_kept_beside_each_other_and_a_retracted_amendment_brings_the_earlier_one_back()
    {
        await Outfit("auk", "E-5", "P-5");
        var trial = Trial("auk", "2026-02-01T10:00:00", 5600, 120);
        await Take(trial);
        await Settle();
        var first = await reading.FindingAsync(Tenant, "auk", Ct);

        var amended = Trial("auk", "2026-02-01T10:00:00", 5650, 120) with { Entry = At("2026-02-01T10:00:00") with { Amends = trial.Entry!.Id, EnteredAt = "2026-02-03T08:00:00" } };
        await Take(amended);
        await Settle();
        Assert.Equal(5650, (await reading.FindingAsync(Tenant, "auk", Ct))!.Finding.Positions[0].Mounting!.Band.ObservedRpm);

        await Take(new Retract(At("2026-02-04T08:00:00"), amended.Entry!.Id, "typed_wrong", Boat: "auk"));
        await Settle();
        var last = await reading.FindingAsync(Tenant, "auk", Ct);
        Assert.Equal(first!.Finding.Positions[0].Mounting!.Band, last!.Finding.Positions[0].Mounting!.Band);
    }

    [Fact]
    public async Task A_boat_outside_its_band_raises_one_alarm_however_often_it_is_assessed()
    {
        await Outfit("coot", "E-6", "P-6");
        await Take(Trial("coot", "2026-02-01T10:00:00", 6150, 120));
        await Settle();
        await Take(new ReadHours(At("2026-02-05T10:00:00"), "E-6", 124));
        await Settle();
        await using var command = database.Source.CreateCommand("select count(*) from fleetwake.mt_events where type = 'alarm_raised'");
        Assert.Equal(1L, await command.ExecuteScalarAsync(Ct));
    }

    [Fact]
    public async Task An_alarm_is_lifted_when_its_mounting_ends()
    {
        await Outfit("sora", "E-14", "P-14");
        await Take(Trial("sora", "2026-02-01T10:00:00", 6150, 120));
        await Settle();
        await Take(new RemoveProp(At("2026-02-02T10:00:00"), "sora", "single", "worn", "P-14"));
        await Settle();
        await using var command = database.Source.CreateCommand("select array_agg(type::text order by seq_id) from fleetwake.mt_events where type like 'alarm%'");
        Assert.Equal(["alarm_raised", "alarm_lifted"], (string[])(await command.ExecuteScalarAsync(Ct))!);
    }

    [Fact]
    public async Task A_new_start_tries_parked_boats_again_and_marks_those_found_by_another_method()
    {
        await Outfit("kora", "E-15", "P-15");
        await Settle();
        await Run("update fleetwake.mt_doc_current_finding set data = jsonb_set(data, '{findingId}', '\"kora/x/0/older\"')");
        await Run("insert into fleetwake.dirty_boats (operator, boat, sequence, marked_at, attempts, parked_at) values ('skerry-bay', 'moa', 1, now(), 5, now())");
        await step.StartOverAsync(Ct);
        Assert.Equal(2, (await reading.BacklogAsync(Ct)).Waiting);
        await Settle();
        Assert.EndsWith("/" + Assess.Method, (await reading.FindingAsync(Tenant, "kora", Ct))!.Id, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_boat_that_cannot_be_assessed_is_parked_in_view_and_the_others_go_on()
    {
        await Outfit("rail", "E-7", "P-7");
        await Outfit("crake", "E-8", "P-8");
        await Settle();
        await Run("update fleetwake.mt_events set data = '{\"entry\": 3}' where stream_id = 'boat/rail'");
        await Run("insert into fleetwake.dirty_boats (operator, boat, sequence, marked_at, attempts) values ('skerry-bay', 'rail', 99, now() - interval '1 minute', 0)");
        await Take(new ReadHours(At("2026-02-05T10:00:00"), "E-8", 124));
        await daemon.WaitForNonStaleData(Patience);

        while ((await reading.BacklogAsync(Ct)).Waiting > 0)
        {
            await step.TakeOneAsync(Ct);
            await Run("update fleetwake.dirty_boats set not_before = null");
        }

        var backlog = await reading.BacklogAsync(Ct);
        Assert.Equal("rail", Assert.Single(backlog.Parked).Boat);
        Assert.Equal(0, backlog.Waiting);
        Assert.Equal(124, (await reading.FindingAsync(Tenant, "crake", Ct))!.Finding.Positions[0].EngineHours);
    }

    [Fact]
    public async Task Workers_side_by_side_take_different_boats()
    {
        for (var i = 0; i < 12; i++) await Outfit($"boat-{i}", $"EE-{i}", $"PP-{i}");
        await daemon.WaitForNonStaleData(Patience);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(async () =>
        {
            while (!await reading.UpToDateAsync(Ct)) await step.TakeOneAsync(Ct);
        })));
        Assert.Equal(12, (await reading.FindingsAsync(Tenant, Ct)).Count);
    }

    [Fact]
    public async Task The_daemons_history_of_a_boat_is_the_fold_of_its_stream_and_stays_so_when_rebuilt()
    {
        await Outfit("shag", "E-9", "P-9");
        await daemon.WaitForNonStaleData(Patience);
        var before = System.Text.Json.JsonSerializer.Serialize(await reading.LogAsync(Tenant, "shag", Ct), LogbookJson.Options);
        await daemon.RebuildProjectionAsync<FactLogProjection>(Ct);
        var after = System.Text.Json.JsonSerializer.Serialize(await reading.LogAsync(Tenant, "shag", Ct), LogbookJson.Options);
        Assert.Equal(before, after);
        Assert.Contains("prop_mounted", after, StringComparison.Ordinal);
    }

    private async Task Settle()
    {
        await daemon.WaitForNonStaleData(Patience);
        while ((await reading.BacklogAsync(Ct)).Waiting > 0) await step.TakeOneAsync(Ct);
    }

    private async Task Outfit(string boat, string engine, string prop)
    {
        await Take(new RegisterBoat(At("2026-01-01T09:00:00"), boat, boat, "north", "Pacific/Auckland", "salt", ["single"]));
        await Take(new RegisterEngine(At("2026-01-01T09:00:00"), engine, "Skerry 50", 5000, 6000, 2.08, TachometerStepRpm: 10));
        await Take(new RegisterProp(At("2026-01-01T09:00:00"), prop, 11.5, 13, 3, "aluminium", "right"));
        await Take(new FitEngine(At("2026-01-01T09:30:00"), boat, "single", engine, 90));
        await Take(new MountProp(At("2026-01-01T10:00:00"), boat, "single", prop, 90));
    }

    private async Task Take<T>(T command)
        where T : ICommand<T>
    {
        var answer = await recorder.TakeAsync(Tenant, RecordKind.Find(T.Kind)!, command, new Arrival("dock-1", Now, null), Ct);
        Assert.True(answer.Outcome == Outcome.Recorded, System.Text.Json.JsonSerializer.Serialize(answer, LogbookJson.Options));
    }

    private RunTrial Trial(string boat, string at, double rpm, double hours) => new(
        At(at),
        boat,
        "wide_open",
        [
            new TrialRunSent(25, "kn", 90, [new TachometerSent("single", rpm)]),
            new TrialRunSent(27, "kn", 270, [new TachometerSent("single", rpm)]),
        ],
        [new MeterSent("single", hours)]);

    private Stamp At(string time) => new(new Guid(++entries, 1, 1, new byte[8]), "mech-1", time, "Pacific/Auckland", entries);

    private async Task Run(string sql)
    {
        await using var command = database.Source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }
}
