using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Faults.Tests;

/// <summary>Several <c>fleetwake work</c> processes on one database, looked at from outside.</summary>
internal sealed class Workers : IAsyncDisposable
{
    private readonly FleetDatabase database;
    private readonly List<FleetProgram> programs = [];
    private readonly string mail = Directory.CreateTempSubdirectory("fleetwake-workers-mail-").FullName;

    private Workers(FleetDatabase database, string connection) => (this.database, Connection) = (database, connection);

    public string Connection { get; }

    public IReadOnlyList<FleetProgram> Programs => programs;

    /// <summary>The mails that went out.</summary>
    public int Mails => Directory.GetFiles(mail, "*.eml").Length;

    public static async Task<Workers> StartAsync(string connection, int count, CancellationToken ct)
    {
        var workers = new Workers(await FleetDatabase.OnAsync(connection, ct), connection);
        await workers.Operators.OpenAsync(RunningFleet.Operator, "Skerry Bay Hire", RunningFleet.Zone, ct);
        for (var i = 0; i < count; i++) workers.programs.Add(workers.Another());
        foreach (var program in workers.programs) await program.SaysAsync("fleetwake: working", ct);
        return workers;
    }

    public FleetOperators Operators => new(database.Store, TimeProvider.System);

    public FleetProgram Another() => new(Connection, [("FLEETWAKE_MAIL_FOLDER", mail)], "work");

    /// <summary>A process that holds a lock of the daemon; each of its steps has one.</summary>
    public async Task<FleetProgram> LeaderAsync(CancellationToken ct)
    {
        FleetProgram? leader = null;
        await RunningFleet.UntilAsync("a leader", async () =>
        {
            var name = await AskAsync<string>(
                "select min(a.application_name) from pg_locks l join pg_stat_activity a using (pid) where l.locktype = 'advisory' and l.granted and a.datname = current_database()", ct);
            leader = programs.FirstOrDefault(p => name?.Contains($"-{p.Id}-", StringComparison.Ordinal) == true);
            return leader is not null;
        }, ct);
        return leader!;
    }

    public async Task TakeAsync(IEnumerable<ICommand> records, CancellationToken ct)
    {
        var recorder = new Recorder(database.Store);
        foreach (var record in records)
        {
            var answer = await recorder.TakeAsync(RunningFleet.Operator, RecordKind.Find(Demo.BatchJson.Kind(record))!, record, new Arrival("dock-1", TimeProvider.System.GetUtcNow(), null), ct);
            Assert.Equal(Outcome.Recorded, answer.Outcome);
        }
    }

    public async Task SubscribeAsync(CancellationToken ct) => await Operators.SubscribeAsync(
        (await Operators.FindAsync(RunningFleet.Operator, ct))!, "manager@skerry-bay.example", Reports.Digests.WeeklyWear.Digest, ct);

    /// <summary>Trials in the present finding of a boat; -1 when there is none.</summary>
    public async Task<int> TrialsAsync(string boat, CancellationToken ct)
    {
        var finding = await new Store.Histories.FleetReading(database.Store, database.Source).FindingAsync(RunningFleet.Operator, boat, ct);
        return finding?.Finding.Positions[0].Mounting?.Trials.Count ?? -1;
    }

    /// <summary>Every event is folded and every boat assessed.</summary>
    public Task<bool> UpToDateAsync(CancellationToken ct) => new Store.Histories.FleetReading(database.Store, database.Source).UpToDateAsync(ct);

    public async Task<T?> AskAsync<T>(string sql, CancellationToken ct)
    {
        await using var command = database.Source.CreateCommand(sql);
        return await command.ExecuteScalarAsync(ct) is T value ? value : default;
    }

    /// <summary>Every stream's folded log holds each of its events once: nothing was lost, nothing applied twice.</summary>
    public async Task IsFoldedOnceAsync(CancellationToken ct)
    {
        await RunningFleet.UntilAsync("everything folded", () => UpToDateAsync(ct), ct);
        await using var session = database.Store.QuerySession(RunningFleet.Operator);
        foreach (var log in await Marten.QueryableExtensions.ToListAsync(session.Query<FactLog>(), ct))
        {
            var events = await session.Events.FetchStreamAsync(log.Id, token: ct);
            Assert.Equal(events.Count, log.Facts.Count);
        }

        // The fleet's own stream is not folded.
        Assert.Equal(
            await AskAsync<long>("select count(*) from fleetwake.mt_streams where id <> 'fleet'", ct),
            await AskAsync<long>("select count(*) from fleetwake.mt_doc_fact_log", ct));
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var program in programs)
        {
            // A stopped process takes no signal but this one.
            if (!program.HasEnded) program.Signal("CONT");
            program.Dispose();
        }

        await database.DisposeAsync();
        Directory.Delete(mail, recursive: true);
    }
}
