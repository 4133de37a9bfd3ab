using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;
using FleetWake.Store.Findings;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using JasperFx.Events.Daemon;
using Marten.Events;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetWake.Store.Tests.Fleet;

/// <summary>An operator with boats and trials in a database of its own, a daemon that folds, and a clock that is set.</summary>
internal sealed class StoredFleet : IAsyncDisposable
{
    public const string Tenant = "skerry-bay";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly IProjectionDaemon daemon;
    private readonly Recorder recorder;
    private readonly FindingStep findings;
    private int entries;

    private StoredFleet(FleetDatabase database, IProjectionDaemon daemon, SetTime time)
    {
        (Database, this.daemon, Time) = (database, daemon, time);
        recorder = new(database.Store);
        findings = new(database.Store, database.Source, TimeProvider.System, NullLogger<FindingStep>.Instance);
        Reading = new(database.Store, database.Source);
        Operators = new(database.Store, time);
    }

    public FleetDatabase Database { get; }

    public SetTime Time { get; }

    public FleetReading Reading { get; }

    public FleetOperators Operators { get; }

    public OperatorCard Card { get; } = new(Tenant, "Skerry Bay Hire", "Pacific/Auckland");

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static async Task<StoredFleet> OnAsync(string connection)
    {
        var database = await FleetDatabase.OnAsync(connection, Ct);
        var daemon = await database.Store.BuildProjectionDaemonAsync();
        await daemon.StartAllAsync();
        var fleet = new StoredFleet(database, daemon, new SetTime());
        await fleet.Operators.OpenAsync(fleet.Card.Id, fleet.Card.Name, fleet.Card.Zone, Ct);
        return fleet;
    }

    /// <summary>A fit step of its own, as another process has.</summary>
    public FleetFitStep Step() => new(Database.Store, Database.Source, Reading, Operators, Time, NullLogger<FleetFitStep>.Instance);

    public Task<FleetFit> FitAsync(FitWish wish = FitWish.Now) => Step().FitAsync(Card, wish, Ct);

    /// <summary>A boat whose trials rise by so many RPM in 25 hours.</summary>
    public async Task WearingAsync(string boat, double rise, int trials = 4)
    {
        await TakeAsync(new RegisterBoat(At("2026-01-01T09:00:00"), boat, boat, "north", "Pacific/Auckland", "salt", ["single"]));
        await TakeAsync(new RegisterEngine(At("2026-01-01T09:00:00"), "e-" + boat, "Skerry 50", 5000, 6000, 2.08, TachometerStepRpm: 10));
        await TakeAsync(new RegisterProp(At("2026-01-01T09:00:00"), "p-" + boat, 11.5, 13, 3, "aluminium", "right"));
        await TakeAsync(new FitEngine(At("2026-01-01T09:30:00"), boat, "single", "e-" + boat, 90));
        await TakeAsync(new MountProp(At("2026-01-01T10:00:00"), boat, "single", "p-" + boat, 90));
        for (var i = 0; i < trials; i++) await TakeAsync(Trial(boat, $"2026-0{i / 2 + 1}-{(i % 2 * 14) + 3:00}T10:00:00", 5600 + (rise * i), 100 + (25 * i)));
    }

    public RunTrial Trial(string boat, string at, double rpm, double hours) => new(
        At(at),
        boat,
        "wide_open",
        [
            new TrialRunSent(25, "kn", 90, [new TachometerSent("single", rpm)]),
            new TrialRunSent(27, "kn", 270, [new TachometerSent("single", rpm)]),
        ],
        [new MeterSent("single", hours)]);

    public Stamp At(string time) => new(new Guid(++entries, 1, 1, new byte[8]), "mech-1", time, "Pacific/Auckland", entries);

    public async Task TakeAsync<T>(T command)
        where T : ICommand<T>
    {
        var answer = await recorder.TakeAsync(Tenant, RecordKind.Find(T.Kind)!, command, new Arrival("dock-1", new(2026, 5, 4, 9, 0, 0, TimeSpan.Zero), null), Ct);
        Assert.Equal(Outcome.Recorded, answer.Outcome);
    }

    /// <summary>Everything is folded.</summary>
    public Task FoldedAsync() => daemon.WaitForNonStaleData(Patience);

    /// <summary>Everything is folded, and every boat that is marked assessed.</summary>
    public async Task SettledAsync()
    {
        await FoldedAsync();
        while (!await Reading.UpToDateAsync(Ct)) await findings.TakeOneAsync(Ct);
    }

    public async Task<T?> AskAsync<T>(string sql)
    {
        await using var command = Database.Source.CreateCommand(sql);
        return await command.ExecuteScalarAsync(Ct) is T value ? value : default;
    }

    /// <summary>How many fits are recorded.</summary>
    public Task<long> RecordedAsync() => AskAsync<long>("select count(*) from fleetwake.mt_events where type = 'fleet_prior_fitted'");

    public async ValueTask DisposeAsync()
    {
        await daemon.StopAllAsync();
        daemon.Dispose();
        await Database.DisposeAsync();
    }
}

/// <summary>A clock that stands where it is set; it starts in the afternoon of 2026-05-04 in Auckland.</summary>
internal sealed class SetTime : TimeProvider
{
    private DateTimeOffset now = new(2026, 5, 4, 2, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => now;

    public void Set(DateTimeOffset to) => now = to;
}
