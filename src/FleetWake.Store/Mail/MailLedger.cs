using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using JasperFx;
using Marten;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>
/// What was to be sent, tried and sent. A digest of a period is issued once, whatever clocks, nodes and restarts do:
/// its key is unique, and its messages are queued in the same transaction.
/// </summary>
public sealed class MailLedger(IDocumentStore store, NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>A sender that has not reported for this long is taken to be dead.</summary>
    public static readonly TimeSpan Lease = TimeSpan.FromMinutes(5);

    private const string Queue =
        "insert into " + WorkTables.OutgoingMail + " (operator, message, recipient, state, attempts, unclear, not_before, mime) values (?, ?, ?, 'queued', 0, 0, ?, ?)";

    private const string Claim =
        "select operator, message, attempts, state, unclear, mime from " + WorkTables.OutgoingMail
        + " where state in ('queued', 'deferred', 'unclear', 'sending') and (not_before <= $1"
        // Written by a clock that ran ahead, for no wait is as long. Not while it is being sent: that one may run ahead still.
        + " or (state <> 'sending' and not_before > $2))"
        + " order by not_before for update skip locked limit 1";

    private const string Update =
        "update " + WorkTables.OutgoingMail + " set state = $3, attempts = $4, unclear = $5, not_before = $6, last_error = $7,"
        // Who it went to is nobody's business once it is settled.
        + " mime = case when $3 in ('sent', 'refused') then ''::bytea else mime end"
        + " where operator = $1 and message = $2 and attempts = $8 and state = $9";

    /// <summary>The periods of which a digest was issued, each with when by the clock that issued it.</summary>
    public async Task<IReadOnlyDictionary<string, DateTimeOffset>> IssuedAsync(string @operator, string digest, string? dock, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var prefix = Key(digest, dock, "");
        var issued = await session.Query<IssuedDigest>().Where(d => d.Id.StartsWith(prefix)).ToListAsync(ct);
        return issued.ToDictionary(d => d.Id[prefix.Length..], d => d.IssuedAt, StringComparer.Ordinal);
    }

    /// <summary>
    /// Issues a digest of a period with its messages, and records the periods that are passed over with it; false when it was
    /// issued before, and nothing is queued then.
    /// </summary>
    public async Task<bool> IssueAsync(
        OperatorCard @operator, string digest, string period, IReadOnlyList<NewMail> mails, IReadOnlyList<string> passedOver, CancellationToken ct, string? dock = null)
    {
        var now = time.GetUtcNow();
        await using var session = store.LightweightSession(@operator.Id);
        session.Insert(new IssuedDigest(Key(digest, dock, period), now, mails.Count));
        session.Events.Append(
            StreamName.Operator,
            new DigestIssued(ProgramEntry.At(now, @operator.Zone), digest, period, [.. mails.Select(m => m.Message)]) { Dock = dock });
        foreach (var passed in passedOver)
            session.Events.Append(StreamName.Operator, new DigestPassedOver(ProgramEntry.At(now, @operator.Zone), digest, passed, period) { Dock = dock });
        foreach (var mail in mails)
        {
            session.Events.Append(StreamName.Mail(mail.Message), new MailQueued(ProgramEntry.At(now, @operator.Zone), mail.Recipient, mail.MessageId));
            session.QueueSqlCommand(Queue, @operator.Id, mail.Message, mail.Recipient, now, mail.Mime);
        }

        try
        {
            await session.SaveChangesAsync(ct);
            return true;
        }
        catch (DocumentAlreadyExistsException)
        {
            return false;
        }
    }

    /// <summary>Claims a message that is due and records the attempt before anything is sent; null when none is.</summary>
    public async Task<ClaimedMail?> ClaimAsync(CancellationToken ct)
    {
        while (true)
        {
            var now = time.GetUtcNow();
            await using var connection = await source.OpenConnectionAsync(ct);
            await using var transaction = await connection.BeginTransactionAsync(ct);
            if (await NextAsync(connection, now, ct) is not { } next) return null;

            var at = ProgramEntry.At(now, "UTC");
            List<IFact> facts = [];
            if (next.State == MailState.Sending) facts.Add(new MailUnclear(at, next.Mail.Attempt - 1, "the sender stopped during the attempt"));
            var unclear = next.Mail.Unclear + (next.State == MailState.Sending ? 1 : 0);
            var before = new Standing(next.State, next.Mail.Attempt - 1);
            if (unclear >= MailState.MostUnclearAttempts)
            {
                facts.Add(new MailRefused(ProgramEntry.At(now, "UTC"), next.Mail.Attempt - 1, "unclear too often: left alone, so as not to send it many times"));
                await WriteAsync(transaction, next.Mail, facts, before, new Change(MailState.Refused, before.Attempts, unclear, now, "unclear too often"), ct);
                continue;
            }

            facts.Add(new MailAttempted(ProgramEntry.At(now, "UTC"), next.Mail.Attempt));
            await WriteAsync(transaction, next.Mail, facts, before, new Change(MailState.Sending, next.Mail.Attempt, unclear, now + Lease, null), ct);
            return next.Mail with { Unclear = unclear };
        }
    }

    /// <summary>Records that the message was taken.</summary>
    public Task SentAsync(ClaimedMail mail, CancellationToken ct) =>
        SettleAsync(mail, at => new MailSent(at, mail.Attempt), MailState.Sent, null, ct);

    /// <summary>Records that the server may or may not have the message; it is sent again with the same Message-ID, a few times at most.</summary>
    public Task UnclearAsync(ClaimedMail mail, string why, CancellationToken ct) =>
        SettleAsync(mail, at => new MailUnclear(at, mail.Attempt, why), MailState.Unclear, why, ct);

    /// <summary>Records that the server refused the message for good.</summary>
    public Task RefusedAsync(ClaimedMail mail, string why, CancellationToken ct) =>
        SettleAsync(mail, at => new MailRefused(at, mail.Attempt, why), MailState.Refused, why, ct);

    /// <summary>Records a failure before the message was handed over; it is tried again with growing waits, then given up.</summary>
    public Task DeferredAsync(ClaimedMail mail, string why, CancellationToken ct) => mail.Attempt >= MailState.MostAttempts
        ? RefusedAsync(mail, $"given up after {mail.Attempt} attempts: {why}", ct)
        : SettleAsync(mail, at => new MailDeferred(at, mail.Attempt, why), MailState.Deferred, why, ct);

    /// <summary>How many messages stand in each state.</summary>
    public async Task<IReadOnlyDictionary<string, int>> CountsAsync(CancellationToken ct)
    {
        await using var command = source.CreateCommand("select state, count(*)::int from " + WorkTables.OutgoingMail + " group by state");
        await using var reader = await command.ExecuteReaderAsync(ct);
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        while (await reader.ReadAsync(ct)) counts[reader.GetString(0)] = reader.GetInt32(1);
        return counts;
    }

    /// <summary>How many messages were refused or given up since a moment, those aside whose reader unsubscribed meanwhile.</summary>
    public async Task<int> RefusedSinceAsync(DateTimeOffset since, CancellationToken ct)
    {
        await using var command = source.CreateCommand(
            "select count(*)::int from " + WorkTables.OutgoingMail + " where state = $1 and not_before > $2 and last_error is distinct from $3");
        object[] values = [MailState.Refused, since, MailState.Unsubscribed];
        foreach (var value in values) command.Parameters.Add(new NpgsqlParameter { Value = value });
        return (int)(await command.ExecuteScalarAsync(ct))!;
    }

    private static async Task<Due?> NextAsync(NpgsqlConnection connection, DateTimeOffset now, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Claim, connection) { Parameters = { new() { Value = now }, new() { Value = now + MailState.BeyondAnyWait } } };
        await using var reader = await command.ExecuteReaderAsync(ct);
        if (!await reader.ReadAsync(ct)) return null;
        var mail = new ClaimedMail(reader.GetString(0), reader.GetString(1), reader.GetInt32(2) + 1, reader.GetInt32(4), reader.GetFieldValue<byte[]>(5));
        return new Due(mail, reader.GetString(3));
    }

    private async Task SettleAsync(ClaimedMail mail, Func<Entry, IFact> fact, string state, string? error, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var connection = await source.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        var unclear = mail.Unclear + (state == MailState.Unclear ? 1 : 0);
        var change = new Change(state, mail.Attempt, unclear, now + MailState.Wait(mail.Attempt), error);
        await WriteAsync(transaction, mail, [fact(ProgramEntry.At(now, "UTC"))], new Standing(MailState.Sending, mail.Attempt), change, ct);
    }

    /// <summary>Changes the row if it still stands as it did; a sender that outlived its lease has nothing more to say.</summary>
    private async Task WriteAsync(
        NpgsqlTransaction transaction, ClaimedMail mail, IReadOnlyList<IFact> facts, Standing before, Change change, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Update, transaction.Connection);
        object[] values =
        [
            mail.Operator, mail.Message, change.State, change.Attempts, change.Unclear, change.NotBefore, (object?)change.Error ?? DBNull.Value,
            before.Attempts, before.State,
        ];
        foreach (var value in values) command.Parameters.Add(new NpgsqlParameter { Value = value });
        if (await command.ExecuteNonQueryAsync(ct) == 0) return;

        var options = SessionOptions.ForTransaction(transaction);
        options.TenantId = mail.Operator;
        await using var session = store.OpenSession(options);
        session.Events.Append(StreamName.Mail(mail.Message), facts);
        await session.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
    }

    // No id of a dock holds a slash or an at sign: the keys of one group are never the beginning of another's.
    private static string Key(string digest, string? dock, string period) => dock is null ? $"{digest}/{period}" : $"{digest}@{dock}/{period}";

    private sealed record Due(ClaimedMail Mail, string State);

    private sealed record Standing(string State, int Attempts);

    private sealed record Change(string State, int Attempts, int Unclear, DateTimeOffset NotBefore, string? Error);
}
