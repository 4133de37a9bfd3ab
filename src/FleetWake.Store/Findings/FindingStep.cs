using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FleetWake.Logbook.Alarms;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Schema;
using FleetWake.Store.Telemetry;
using Marten;
using Marten.Services;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetWake.Store.Findings;

/// <summary>
/// Claims a dirty boat, folds its logs, assesses it and stores the finding, all in one transaction. A row that one
/// worker holds is skipped by the others, and is free again the moment its worker dies.
/// </summary>
public sealed partial class FindingStep(IDocumentStore store, NpgsqlDataSource source, TimeProvider time, ILogger<FindingStep> log)
{
    /// <summary>A boat that failed this often is parked until a new record of it arrives.</summary>
    public const int MostAttempts = 5;

    /// <summary>A phone empties its outbox in a burst: a boat is left alone this long after its first mark, and assessed once for all of it.</summary>
    public static readonly TimeSpan Settling = TimeSpan.FromMilliseconds(300);

    private const string Claim =
        "select operator, boat, sequence from " + WorkTables.DirtyBoats
        + " where parked_at is null and (not_before is null or not_before <= now()) and marked_at <= now() - $1::interval"
        + " order by marked_at for update skip locked limit 1";

    private const string Clean = "delete from " + WorkTables.DirtyBoats + " where operator = $1 and boat = $2";

    private const string Failed =
        "update " + WorkTables.DirtyBoats + " set attempts = attempts + 1, last_error = $3,"
        + " not_before = now() + make_interval(secs => power(2, attempts)),"
        + " parked_at = case when attempts + 1 >= $4 then now() end where operator = $1 and boat = $2";

    private const string MarkOtherMethods =
        "insert into " + WorkTables.DirtyBoats + " (operator, boat, sequence, marked_at, attempts)"
        + " select tenant_id, id, 0, now(), 0 from " + FleetStore.SchemaName + ".mt_doc_current_finding"
        + " where data ->> 'findingId' not like '%/' || $1 on conflict do nothing";

    private const string Unpark =
        "update " + WorkTables.DirtyBoats + " set parked_at = null, attempts = 0, not_before = null where parked_at is not null";

    private readonly FleetPriorBook priorBook = new();

    /// <summary>
    /// What a new start may have changed: boats found by another method are marked, and parked ones tried again, for a
    /// mended program may be able to assess them.
    /// </summary>
    public async Task StartOverAsync(CancellationToken ct)
    {
        await using (var mark = source.CreateCommand(MarkOtherMethods))
        {
            mark.Parameters.Add(new NpgsqlParameter { Value = Assess.Method });
            await mark.ExecuteNonQueryAsync(ct);
        }

        await using var unpark = source.CreateCommand(Unpark);
        await unpark.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Assesses one dirty boat; false when none is waiting.</summary>
    public async Task<bool> TakeOneAsync(CancellationToken ct)
    {
        await using var connection = await source.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        if (await ClaimAsync(connection, ct) is not { } claim) return false;
        var begun = time.GetTimestamp();
        using var span = FleetMeter.Spans.StartActivity("assess boat");
        try
        {
            await AssessAsync(claim, transaction, ct);
            await Run(connection, Clean, ct, claim.Tenant, claim.Boat);
            await transaction.CommitAsync(ct);
            FleetMeter.Findings.Add(1, FleetMeter.Outcome("stored"));
            FleetMeter.FindingDuration.Record(time.GetElapsedTime(begun).TotalSeconds);
        }
        catch (Exception e) when (e is not OperationCanceledException && (!IsDatabaseDown(e) || IsTimeout(e)))
        {
            // A connection that timed out may be broken: let go of it, and note the failure on another.
            await transaction.DisposeAsync();
            await connection.DisposeAsync();
            LogFailed(e, claim.Boat, claim.Tenant);
            FleetMeter.Findings.Add(1, FleetMeter.Outcome("failed"));
            span?.SetStatus(ActivityStatusCode.Error);
            await using var another = await source.OpenConnectionAsync(CancellationToken.None);
            await Run(another, Failed, CancellationToken.None, claim.Tenant, claim.Boat, e.Message, MostAttempts);
        }

        return true;
    }

    /// <summary>
    /// Whether the database itself is unwell, which is no fault of the boat or the record at hand: connection (08),
    /// rollback after deadlock or serialization (40), resources such as a full disk (53), object in use (55), operator
    /// intervention (57), input or output (58).
    /// </summary>
    public static bool IsDatabaseDown(Exception e) =>
        e is PostgresException pg ? pg.SqlState[..2] is "08" or "40" or "53" or "55" or "57" or "58"
        : e is NpgsqlException or ObjectDisposedException || (e.InnerException is { } inner && IsDatabaseDown(inner));

    /// <summary>One boat that takes too long must not keep the others waiting: it counts as that boat's failure.</summary>
    private static bool IsTimeout(Exception e) => e is TimeoutException || (e.InnerException is { } inner && IsTimeout(inner));

    private async Task AssessAsync(Claimed claim, NpgsqlTransaction transaction, CancellationToken ct)
    {
        var options = SessionOptions.ForTransaction(transaction);
        options.TenantId = claim.Tenant;
        options.Tracking = DocumentTracking.None;
        await using var session = store.OpenSession(options);

        var dossier = await Dossiers.LoadAsync(session, claim.Boat, ct);
        var history = BoatHistory.Tell(dossier);
        var priors = await priorBook.NewestAsync(session, ct);
        var finding = Assess.Boat(history, priors);
        var at = time.GetUtcNow();
        var hash = Hash(dossier);
        var id = $"{claim.Boat}/{hash[..24]}/{priors.Number}/{finding.Method}";
        if (await session.LoadAsync<StoredFinding>(id, ct) is null)
            session.Insert(new StoredFinding(id, claim.Boat, hash, priors.Number, finding.Method, claim.Sequence, at, finding));
        session.Store(new CurrentFinding(claim.Boat, id));
        await JudgeAsync(session, finding, history.Mountings, at, ct);
        await session.SaveChangesAsync(ct);
    }

    private static async Task JudgeAsync(
        IDocumentSession session, BoatFinding finding, IReadOnlyList<MountingSpan> mountings, DateTimeOffset at, CancellationToken ct)
    {
        var told = await Dossiers.LogsAsync(session, [.. mountings.Select(m => StreamName.Alarms(m.Id))], ct);
        foreach (var mounting in mountings)
        {
            var log = told[StreamName.Alarms(mounting.Id)];
            var now = finding.Positions.FirstOrDefault(p => p.Mounting?.Mounting == mounting.Id);
            var facts = now is null ? JudgeAlarms.Ended(finding, mounting.Id, log, at) : JudgeAlarms.Of(finding, now, log, at);
            if (facts.Count > 0) session.Events.Append(log.Id, facts);
        }
    }

    private static string Hash(Dossier dossier) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(JsonSerializer.Serialize(dossier.Logs(), LogbookJson.Options))));

    private static async Task<Claimed?> ClaimAsync(NpgsqlConnection connection, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Claim, connection) { Parameters = { new() { Value = Settling } } };
        await using var reader = await command.ExecuteReaderAsync(ct);
        return await reader.ReadAsync(ct) ? new Claimed(reader.GetString(0), reader.GetString(1), reader.GetInt64(2)) : null;
    }

    private static async Task Run(NpgsqlConnection connection, string sql, CancellationToken ct, params object[] values)
    {
        await using var command = new NpgsqlCommand(sql, connection);
        foreach (var value in values) command.Parameters.Add(new NpgsqlParameter { Value = value });
        await command.ExecuteNonQueryAsync(ct);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Boat {Boat} of {Operator} could not be assessed; it is tried again, then parked. The others go on.")]
    private partial void LogFailed(Exception e, string boat, string @operator);

    private sealed record Claimed(string Tenant, string Boat, long Sequence);
}
