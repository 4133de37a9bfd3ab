using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Marten;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <content>Claim, send, confirm: an attempt is recorded before anything is sent, and what became of it afterwards.</content>
public sealed partial class MailLedger
{
    private const string Claim =
        "select operator, message, attempts, state, unclear, mime, recipient, coalesce(host, ''), until_at, coalesce(digest, ''), coalesce(granted, 0) from " + WorkTables.OutgoingMail
        + " where state in ('queued', 'deferred', 'unclear', 'sending') and coalesce(host, '') <> all($3) and not " + MailHolds.Held + " and (not_before <= $1"
        // Written by a clock that ran ahead, for no wait is as long. Not while it is being sent: that one may run ahead still.
        + " or (state <> 'sending' and not_before > $2))"
        // What cannot wait does not stand behind a thousand digests.
        + " order by (digest = 'alert') is true desc, not_before for update skip locked limit 1";

    // The link of a question is good for whoever has it: its text goes as soon as it is settled.
    private const string Update =
        "update " + WorkTables.OutgoingMail + " set state = $3, attempts = $4, unclear = $5, not_before = $6, last_error = $7, settled_at = $10,"
        + " mime = case when $11 or ($10::timestamptz is not null and digest = '" + DigestNames.Confirmation + "') then ''::bytea else mime end where operator = $1 and message = $2 and attempts = $8 and state = $9";

    /// <summary>Claims a message that is due and records the attempt before anything is sent; null when none is.</summary>
    public Task<ClaimedMail?> ClaimAsync(CancellationToken ct) => ClaimAsync([], ct);

    /// <summary>Claims a message that is due, but none to the hosts named: they asked to be left alone for a while.</summary>
    public async Task<ClaimedMail?> ClaimAsync(IReadOnlyCollection<string> notTo, CancellationToken ct)
    {
        while (true)
        {
            var now = time.GetUtcNow();
            await using var connection = await source.OpenConnectionAsync(ct);
            await using var transaction = await connection.BeginTransactionAsync(ct);
            if (await NextAsync(connection, now, notTo, ct) is not { } next) return null;

            var at = ProgramEntry.At(now, "UTC");
            List<IFact> facts = [];
            if (next.State == MailState.Sending) facts.Add(new MailUnclear(at, next.Mail.Attempt - 1, "the sender stopped during the attempt"));
            var unclear = next.Mail.Unclear + (next.State == MailState.Sending ? 1 : 0);
            var before = new Standing(next.State, next.Mail.Attempt - 1);
            if (unclear - next.Granted >= MailState.MostUnclearAttempts)
            {
                const string TooOften = "unclear too often: left alone, so as not to send it many times";
                facts.Add(new MailGivenUp(ProgramEntry.At(now, "UTC"), next.Mail.Attempt - 1, TooOften));
                await WriteAsync(transaction, next.Mail, facts, before, new Change(MailState.GivenUp, before.Attempts, unclear, now, TooOften, now), null, ct);
                continue;
            }

            if (await EndOfAsync(next.Mail, before.Attempts, now, ct) is { } end)
            {
                facts.Add(end.Fact);
                await WriteAsync(transaction, next.Mail, facts, before, new Change(end.State, before.Attempts, unclear, now, end.Why, now), null, ct);
                continue;
            }

            facts.Add(new MailAttempted(ProgramEntry.At(now, "UTC"), next.Mail.Attempt));
            await WriteAsync(transaction, next.Mail, facts, before, new Change(MailState.Sending, next.Mail.Attempt, unclear, now + Lease, null, null), null, ct);
            return next.Mail with { Unclear = unclear, AfterSilence = next.State == MailState.Sending };
        }
    }

    /// <summary>Records that the message was taken.</summary>
    /// <param name="mail">The attempt.</param>
    /// <param name="ct">Ends the wait.</param>
    /// <param name="said">What the server answered.</param>
    public Task SentAsync(ClaimedMail mail, CancellationToken ct, string? said = null)
    {
        var now = time.GetUtcNow();
        return SettleAsync(mail, [new MailSent(ProgramEntry.At(now, "UTC"), mail.Attempt, said)], new Change(MailState.Sent, mail.Attempt, mail.Unclear, now, null, now), null, ct);
    }

    /// <summary>Records that the server may or may not have the message; it is sent again with the same Message-ID, a few times at most.</summary>
    public Task UnclearAsync(ClaimedMail mail, string why, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var change = new Change(MailState.Unclear, mail.Attempt, mail.Unclear + 1, now + MailState.Wait(mail.Message, mail.Attempt), why, null);
        return SettleAsync(mail, [new MailUnclear(ProgramEntry.At(now, "UTC"), mail.Attempt, why)], change, null, ct);
    }

    /// <summary>Records that the server refused the message for good, and, when that was about the address, that nothing more is sent to it until a person lets it be tried again.</summary>
    public Task RefusedAsync(ClaimedMail mail, string why, CancellationToken ct, bool aboutAddress = false)
    {
        var now = time.GetUtcNow();
        return SettleAsync(
            mail, [new MailRefused(ProgramEntry.At(now, "UTC"), mail.Attempt, why)], new Change(MailState.Refused, mail.Attempt, mail.Unclear, now, why, now),
            aboutAddress ? (session, connection) => AddressMarks.MarkAsync(session, connection, mail.Recipient, mail.Message, why, now, ct) : null, ct);
    }

    /// <summary>Records a failure before the message was handed over; it is tried again with growing waits for 48 hours, then given up.</summary>
    public Task DeferredAsync(ClaimedMail mail, string why, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var at = ProgramEntry.At(now, "UTC");
        return MailState.Next(mail.Message, mail.Attempt, now, mail.Until) is { } next
            ? SettleAsync(mail, [new MailDeferred(at, mail.Attempt, why)], new Change(MailState.Deferred, mail.Attempt, mail.Unclear, next, why, null), null, ct)
            : SettleAsync(
                mail, [new MailDeferred(at, mail.Attempt, why), new MailGivenUp(ProgramEntry.At(now, "UTC"), mail.Attempt, why)],
                new Change(MailState.GivenUp, mail.Attempt, mail.Unclear, now, $"given up after {mail.Attempt} attempts: {why}", now), null, ct);
    }

    private static async Task<Due?> NextAsync(NpgsqlConnection connection, DateTimeOffset now, IReadOnlyCollection<string> notTo, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Claim, connection)
        {
            Parameters = { new() { Value = now }, new() { Value = now + MailState.BeyondAnyWait }, new() { Value = notTo.ToArray() } },
        };
        await using var reader = await command.ExecuteReaderAsync(ct);
        if (!await reader.ReadAsync(ct)) return null;
        var mail = new ClaimedMail(reader.GetString(0), reader.GetString(1), reader.GetInt32(2) + 1, reader.GetInt32(4), reader.GetFieldValue<byte[]>(5))
        {
            Recipient = reader.GetString(6),
            Host = reader.GetString(7),
            Until = reader.MaybeMoment(8) ?? DateTimeOffset.MaxValue,
            Digest = reader.GetString(9),
        };
        return new Due(mail, reader.GetString(3), reader.GetInt32(10));
    }

    private Task SettleAsync(ClaimedMail mail, IReadOnlyList<IFact> facts, Change change, Func<IDocumentSession, NpgsqlConnection, Task>? more, CancellationToken ct) => Contention.SettleAsync(
        async () =>
        {
            await using var connection = await source.OpenConnectionAsync(ct);
            await using var transaction = await connection.BeginTransactionAsync(ct);

            // Who left while it was being sent is not written to once more; what went out is past recall.
            var end = change.SettledAt is null ? await EndOfAsync(mail, mail.Attempt, time.GetUtcNow(), ct) : null;
            await WriteAsync(
                transaction, mail, end is null ? facts : [.. facts, end.Fact], new Standing(MailState.Sending, mail.Attempt),
                end is null ? change : change with { State = end.State, NotBefore = time.GetUtcNow(), Error = end.Why, SettledAt = time.GetUtcNow() }, more, ct);
        },
        ct);

    /// <summary>Why a message is not sent any more, whatever was so when it was written: its reader left or was forgotten, or its address takes no mail; null when it goes on.</summary>
    private async Task<Ending?> EndOfAsync(ClaimedMail mail, int attempts, DateTimeOffset now, CancellationToken ct)
    {
        await using var session = store.QuerySession(mail.Operator);
        var reader = await session.LoadAsync<Recipient>(mail.Recipient, ct);
        var at = ProgramEntry.At(now, "UTC");
        if (reader is null || mail.Mime.Length == 0 || !(reader.Subscribed || (mail.Digest == DigestNames.Confirmation && reader.ConfirmHash is not null)))
            return new Ending(MailState.Unsubscribed, MailState.Unsubscribed, new MailUnsubscribed(at));
        if (reader.NoMailSince is null) return null;
        var why = AddressMarks.WhyNot(reader.NoMailWhy);
        return new Ending(MailState.GivenUp, why, new MailGivenUp(at, attempts, why));
    }

    /// <summary>Changes the row if it still stands as it did; a sender that outlived its lease has nothing more to say.</summary>
    private async Task WriteAsync(
        NpgsqlTransaction transaction, ClaimedMail mail, IReadOnlyList<IFact> facts, Standing before, Change change, Func<IDocumentSession, NpgsqlConnection, Task>? more, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(Update, transaction.Connection);
        object[] values =
        [
            mail.Operator, mail.Message, change.State, change.Attempts, change.Unclear, change.NotBefore, (object?)change.Error ?? DBNull.Value,
            before.Attempts, before.State, (object?)change.SettledAt ?? DBNull.Value, change.State == MailState.Unsubscribed || (change.SettledAt is not null && Kept <= TimeSpan.Zero),
        ];
        foreach (var value in values) command.Parameters.Add(new NpgsqlParameter { Value = value });
        if (await command.ExecuteNonQueryAsync(ct) == 0) return;

        await using var session = store.OpenSession(SessionOptions.ForTransaction(transaction).For(mail.Operator));
        session.Events.Append(StreamName.Mail(mail.Message), facts);
        if (more is not null) await more(session, transaction.Connection!);
        await session.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
    }

    private sealed record Due(ClaimedMail Mail, string State, int Granted);

    private sealed record Ending(string State, string Why, IFact Fact);

    private sealed record Standing(string State, int Attempts);

    private sealed record Change(string State, int Attempts, int Unclear, DateTimeOffset NotBefore, string? Error, DateTimeOffset? SettledAt);
}
