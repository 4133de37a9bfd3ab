using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using JasperFx;
using Marten;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>Sends a message again because a person asked for it; the ledger says who, and so why it came twice.</summary>
public sealed class MailResends(IDocumentStore store, NpgsqlDataSource source, TimeProvider time)
{
    // Where it is not known whether tries arrived, one more is granted; how many there were stays on record, for as many copies may lie there.
    private const string TryAgain =
        "update " + WorkTables.OutgoingMail + " set state = 'queued', not_before = $3, until_at = $4, settled_at = null,"
        + " granted = greatest(coalesce(granted, 0), unclear - $5)"
        + " where operator = $1 and message = $2 and state in ('deferred', 'unclear', 'refused', 'given_up', 'bounced') and octet_length(mime) > 0";

    private const string Repeats = "select count(*)::int from " + WorkTables.OutgoingMail + " where operator = $1 and again_of = $2";

    /// <summary>Whether a message can be sent again, and if not, why.</summary>
    public async Task<Resend> LookAsync(string @operator, MailLine line, CancellationToken ct)
    {
        if (line.State is MailState.Queued or MailState.Sending) return Resend.OnItsWay;
        if (!line.Kept) return Resend.NotKept;
        await using var session = store.QuerySession(@operator);
        return await session.LoadAsync<Recipient>(line.Recipient, ct) switch
        {
            null or { Subscribed: false } => Resend.ReaderLeft,
            { NoMailSince: not null } => Resend.TakesNoMail,
            _ => line.State == MailState.Sent ? Resend.AsAnother : Resend.Queued,
        };
    }

    /// <summary>Tries a message again that was not accepted, under its old Message-ID, for another 48 hours; false when it was settled or claimed meanwhile.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="message">The message.</param>
    /// <param name="by">Pseudonymous id of the person; null at the command line.</param>
    /// <param name="ct">Ends the wait.</param>
    public Task<bool> TryAgainAsync(OperatorCard @operator, string message, string? by, CancellationToken ct) =>
        Contention.SettleAsync(() => TryAgainOnceAsync(@operator, message, by, ct), ct);

    private async Task<bool> TryAgainOnceAsync(OperatorCard @operator, string message, string? by, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var connection = await source.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        await using var command = new NpgsqlCommand(TryAgain, connection);
        foreach (var value in (object[])[@operator.Id, message, now, now + MailState.TriedFor, MailState.MostUnclearAttempts - 1])
            command.Parameters.Add(new NpgsqlParameter { Value = value });
        if (await command.ExecuteNonQueryAsync(ct) == 0) return false;
        await using var session = store.OpenSession(SessionOptions.ForTransaction(transaction).For(@operator.Id));
        session.Events.Append(StreamName.Mail(message), new MailResendAsked(ProgramEntry.At(now, @operator.Zone, by)));
        await session.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return true;
    }

    /// <summary>
    /// The key of the next repeat of a message that was accepted. With its minute: in a database that was restored the count begins anew, and the journal
    /// of mail would take a new wish for one that was granted before.
    /// </summary>
    public async Task<string> KeyAsync(string @operator, string message, CancellationToken ct) =>
        $"{message}-again-{(await source.ReadAsync(Repeats, r => r.GetInt32(0), ct, @operator, message))[0] + 1}-{time.GetUtcNow().UtcDateTime.ToString("yyyyMMdd'T'HHmm'Z'", CultureInfo.InvariantCulture)}";

    /// <summary>Queues a repeat of a message that was accepted; false when somebody else just did the same.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="of">The message that was accepted.</param>
    /// <param name="again">The repeat, under a Message-ID of its own.</param>
    /// <param name="by">Pseudonymous id of the person; null at the command line.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<bool> AgainAsync(OperatorCard @operator, MailLine of, NewMail again, string? by, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var session = store.LightweightSession(@operator.Id);
        session.Events.Append(StreamName.Mail(of.Message), new MailResendAsked(ProgramEntry.At(now, @operator.Zone, by), again.Message));
        MailLedger.Add(session, @operator, of.Digest ?? "", of.Period ?? "", again with { AgainOf = of.Message }, now);
        try
        {
            await session.SaveChangesAsync(ct);
            return true;
        }
        catch (Exception e) when (e is DocumentAlreadyExistsException || e.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } || e is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            return false;
        }
    }
}

/// <summary>What came of the wish to send a message again.</summary>
public enum Resend
{
    /// <summary>It is tried again, under its old Message-ID.</summary>
    Queued,

    /// <summary>It had been accepted: it goes again as another message, and may stand twice in the mailbox.</summary>
    AsAnother,

    /// <summary>It is on its way as it is.</summary>
    OnItsWay,

    /// <summary>Its text is not kept any more.</summary>
    NotKept,

    /// <summary>Its reader left, or was forgotten.</summary>
    ReaderLeft,

    /// <summary>Its address takes no mail: that has to be mended first.</summary>
    TakesNoMail,

    /// <summary>There is no such message.</summary>
    Unknown,
}
