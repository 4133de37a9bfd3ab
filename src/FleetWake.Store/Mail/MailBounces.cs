using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Marten;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>What a report says became of a message to one recipient (RFC 3464).</summary>
/// <param name="MessageId">Message-ID of the message that it is about, without angle brackets; null when it names none.</param>
/// <param name="Recipient">The address that it was sent to, as it was given at first; null when that is not told.</param>
/// <param name="Failed">Whether it was given up (action <c>failed</c>), or only delayed.</param>
/// <param name="Status">Status of RFC 3463, e.g. <c>5.1.1</c>.</param>
/// <param name="Why">What the server said, without addresses.</param>
public sealed record BounceReport(string? MessageId, string? Recipient, bool Failed, string? Status, string Why)
{
    /// <summary>The address that the server which gave up had tried, when it told both; null when it told one.</summary>
    public string? LastRecipient { get; init; }

    /// <summary>Whether the message is known only by what the report answers (In-Reply-To, References), and not by what of it came back.</summary>
    public bool ByReply { get; init; }

    /// <summary>Whether it says that the address which it names takes no mail (<see cref="AddressStatus"/>). That the message was too big or unwanted, or that nobody answered for days, says nothing of the address.</summary>
    public bool IsAboutAddress => Failed && AddressStatus.SaysGone(Status);

    /// <summary>Whether it names an address. A reader may have mail sent on: that another mailbox is gone says nothing of the reader's own.</summary>
    internal bool Names(string address) => string.Equals(Recipient, address, StringComparison.OrdinalIgnoreCase) || string.Equals(LastRecipient, address, StringComparison.OrdinalIgnoreCase);
}

/// <summary>What came of a report.</summary>
public enum BounceOutcome
{
    /// <summary>No message of ours is like that: nothing was changed.</summary>
    Unknown,

    /// <summary>It is on record; the message stands as it did.</summary>
    Noted,

    /// <summary>The message stands as come back.</summary>
    Bounced,

    /// <summary>That was known.</summary>
    Repeat,
}

/// <summary>Takes reports of undeliverable mail. A report can be forged: it finds a message by its Message-ID, which only its recipient and the servers between know.</summary>
public sealed class MailBounces(IDocumentStore store, NpgsqlDataSource source, TimeProvider time)
{
    // Servers report a delay once or twice; more of it is noise, or somebody's play.
    private const int MostDelays = 5;

    private static readonly TimeSpan Recent = TimeSpan.FromDays(5);

    private const string ById = "select operator, message, recipient, state from " + WorkTables.OutgoingMail + " where message_id = $1 and ($2::text is null or operator = $2) limit 2";

    private const string ByReader =
        "select operator, message, recipient, state from " + WorkTables.OutgoingMail + " where operator = $1 and recipient = $2 and state = 'sent' and settled_at > $3 order by settled_at desc limit 1";

    private const string ComeBack =
        "update " + WorkTables.OutgoingMail + " set state = 'bounced', settled_at = $3, last_error = $4, mime = case when digest = '" + DigestNames.Confirmation + "' then ''::bytea else mime end where operator = $1 and message = $2 and state in ('sent', 'unclear', 'deferred', 'given_up')";

    /// <summary>Takes a report.</summary>
    /// <param name="operator">Whose messages it may be about; null for anybody's.</param>
    /// <param name="report">The report.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<BounceOutcome> TakeAsync(string? @operator, BounceReport report, CancellationToken ct)
    {
        if (report.MessageId is { } id)
            return await source.ReadAsync(ById, Read, ct, id, @operator) is [var one] ? await Contention.SettleAsync(() => TakeAsync(one, report, byId: true, ct), ct) : BounceOutcome.Unknown;
        return report.Recipient is { } address && await LastToAsync(@operator, address, ct) is { } last ? await Contention.SettleAsync(() => TakeAsync(last, report, byId: false, ct), ct) : BounceOutcome.Unknown;
    }

    private async Task<BounceOutcome> TakeAsync(Found found, BounceReport report, bool byId, CancellationToken ct)
    {
        if (found.State == MailState.Bounced) return BounceOutcome.Repeat;
        var now = time.GetUtcNow();
        await using var connection = await source.OpenConnectionAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        var changed = 0;
        if (report.Failed)
        {
            await using var command = new NpgsqlCommand(ComeBack, connection);
            foreach (var value in (object[])[found.Operator, found.Message, now, $"{report.Status} {report.Why}".Trim()]) command.Parameters.Add(new NpgsqlParameter { Value = value });
            changed = await command.ExecuteNonQueryAsync(ct);
        }

        await using var session = store.OpenSession(SessionOptions.ForTransaction(transaction).For(found.Operator));
        var told = (await session.Events.FetchStreamAsync(StreamName.Mail(found.Message), token: ct)).Select(e => e.Data).ToList();
        if (report.Failed ? told.OfType<MailBounced>().Any() && changed == 0 : told.OfType<MailDelayed>().Count() >= MostDelays) return BounceOutcome.Repeat;
        var entry = ProgramEntry.At(now, "UTC");
        session.Events.Append(StreamName.Mail(found.Message), report.Failed ? new MailBounced(entry, report.Status, report.Why) : (object)new MailDelayed(entry, report.Status, report.Why));

        // Found by the address alone, anybody who knows it could have written the report: it must not end somebody's mail.
        if (byId && !report.ByReply && report.IsAboutAddress && await session.LoadAsync<Recipient>(found.Recipient, ct) is { } reader && report.Names(reader.Address))
            await AddressMarks.MarkAsync(session, connection, found.Recipient, found.Message, $"{report.Status} {report.Why}".Trim(), now, ct);
        await session.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return changed > 0 ? BounceOutcome.Bounced : BounceOutcome.Noted;
    }

    private async Task<Found?> LastToAsync(string? @operator, string address, CancellationToken ct)
    {
        await using var look = store.QuerySession();
        var operators = @operator is not null ? [@operator] : (await look.Query<OperatorCard>().ToListAsync(ct)).Select(o => o.Id).ToArray();
        var found = new List<Found>();
        foreach (var one in operators)
        {
            await using var session = store.QuerySession(one);
            foreach (var recipient in await AddressMarks.OfAsync(session, address, ct))
                found.AddRange(await source.ReadAsync(ByReader, Read, ct, one, recipient.Id, time.GetUtcNow() - Recent));
        }

        // Of several it cannot be told which.
        return found is [var only] ? only : null;
    }

    private static Found Read(NpgsqlDataReader r) => new(r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3));

    private sealed record Found(string Operator, string Message, string Recipient, string State);
}
