using System.Security.Cryptography;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using JasperFx;
using Marten;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>
/// What was to be sent, tried and sent. A digest of a period is issued once, whatever clocks, nodes and restarts do:
/// its key is unique, and its messages are queued in the same transaction.
/// </summary>
/// <param name="store">The record.</param>
/// <param name="source">Its database.</param>
/// <param name="time">The clock.</param>
/// <param name="keeping">How long a message is kept when it is settled; as usual when left out.</param>
public sealed partial class MailLedger(IDocumentStore store, NpgsqlDataSource source, TimeProvider time, MailKeeping? keeping = null)
{
    /// <summary>A sender that has not reported for this long is taken to be dead.</summary>
    public static readonly TimeSpan Lease = TimeSpan.FromMinutes(5);

    private const string Queue =
        "insert into " + WorkTables.OutgoingMail
        + " (operator, message, recipient, state, attempts, unclear, not_before, mime, digest, period, dock, subject, message_id, host, again_of, issued_at, until_at)"
        + " values (?, ?, ?, 'queued', 0, 0, ?, ?, ?, ?, nullif(?, ''), nullif(?, ''), ?, nullif(?, ''), nullif(?, ''), ?, ?)";

    // Of what is settled long ago, that it went out stays; what stood in it goes.
    private const string Forget =
        "update " + WorkTables.OutgoingMail + " set mime = ''::bytea where state in ('sent', 'refused', 'given_up', 'bounced', 'unsubscribed')"
        + " and (coalesce(settled_at, not_before) <= $1 or digest = '" + DigestNames.Confirmation + "') and octet_length(mime) > 0";

    /// <summary>The periods of which a digest was issued, as they are on record now.</summary>
    public async Task<IssuedPeriods> IssuedAsync(string @operator, string digest, string? dock, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var prefix = Key(digest, dock, "");
        var issued = await session.Query<IssuedDigest>().Where(d => d.Id.StartsWith(prefix)).ToListAsync(ct);
        return IssuedPeriods.Of(issued.Select(d => (d.Id[prefix.Length..], d.IssuedAt)));
    }

    /// <summary>
    /// Issues a digest of a period with its messages, and records the periods that are passed over with it and the recipients that
    /// are left out, for their address takes no mail or no message could be written to them (<paramref name="unwritten"/>, pseudonymous ids); false when it was issued before, and nothing is queued then.
    /// </summary>
    public Task<bool> IssueAsync(
        OperatorCard @operator, string digest, string period, IReadOnlyList<NewMail> mails, IReadOnlyList<string> passedOver, CancellationToken ct, string? dock = null,
        IReadOnlyList<string>? unwritten = null) =>
        Contention.SettleAsync(() => IssueOnceAsync(@operator, digest, period, mails, passedOver, dock, unwritten ?? [], ct), ct);

    private async Task<bool> IssueOnceAsync(
        OperatorCard @operator, string digest, string period, IReadOnlyList<NewMail> mails, IReadOnlyList<string> passedOver, string? dock, IReadOnlyList<string> unwritten,
        CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var session = store.LightweightSession(@operator.Id);
        mails = await StillWantedAsync(session, mails, ct);
        session.Insert(new IssuedDigest(Key(digest, dock, period), now, mails.Count));
        session.Events.Append(
            StreamName.Operator,
            new DigestIssued(ProgramEntry.At(now, @operator.Zone), digest, period, [.. mails.Select(m => m.Message)]) { Dock = dock });
        foreach (var passed in passedOver)
            session.Events.Append(StreamName.Operator, new DigestPassedOver(ProgramEntry.At(now, @operator.Zone), digest, passed, period) { Dock = dock });
        await LeaveOutAsync(session, @operator, digest, period, dock, unwritten, now, ct);
        foreach (var mail in mails) Add(session, @operator, digest, period, mail, now);
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

    /// <summary>Those of messages whose readers still receive: an edition takes seconds to write, and somebody may leave meanwhile.</summary>
    internal static async Task<IReadOnlyList<NewMail>> StillWantedAsync(IDocumentSession session, IReadOnlyList<NewMail> mails, CancellationToken ct)
    {
        if (mails.Count == 0) return mails;
        var readers = (await session.LoadManyAsync<Recipient>(ct, [.. mails.Select(m => m.Recipient).Distinct(StringComparer.Ordinal)]))
            .Where(r => r.TakesMail()).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        return [.. mails.Where(m => readers.Contains(m.Recipient))];
    }

    /// <summary>Records the readers that a digest goes out without: their address takes no mail, or no message could be written to them.</summary>
    internal static async Task LeaveOutAsync(
        IDocumentSession session, OperatorCard @operator, string digest, string period, string? dock, IReadOnlyList<string> unwritten, DateTimeOffset now, CancellationToken ct)
    {
        foreach (var reader in unwritten)
            session.Events.Append(StreamName.Operator, new RecipientNotWrittenTo(ProgramEntry.At(now, @operator.Zone), reader, digest, period, "a name or an address cannot stand in a header"));
        foreach (var left in (await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).ToListAsync(ct)).Where(r => !r.TakesMail() && r.Dock == dock))
            session.Events.Append(StreamName.Operator, new RecipientLeftOut(ProgramEntry.At(now, @operator.Zone), left.Id, digest, period));
    }

    /// <summary>Queues one message in a session that the caller saves, beside whatever else is to hold with it.</summary>
    /// <param name="session">Session of the operator.</param>
    /// <param name="operator">The operator.</param>
    /// <param name="digest">What it is.</param>
    /// <param name="period">Of which period.</param>
    /// <param name="mail">The message.</param>
    /// <param name="now">The moment.</param>
    internal static void Add(IDocumentSession session, OperatorCard @operator, string digest, string period, NewMail mail, DateTimeOffset now)
    {
        session.Events.Append(
            StreamName.Mail(mail.Message),
            new MailPlanned(ProgramEntry.At(now, @operator.Zone), digest, period, mail.Recipient, mail.MessageId, mail.Dock, mail.AgainOf),
            new MailComposed(ProgramEntry.At(now, @operator.Zone), Convert.ToHexStringLower(SHA256.HashData(mail.Mime)), mail.Mime.Length));
        session.QueueSqlCommand(
            Queue, @operator.Id, mail.Message, mail.Recipient, now, mail.Mime, digest, period, mail.Dock ?? "", mail.Subject ?? "", mail.MessageId,
            mail.Host ?? "", mail.AgainOf ?? "", now, now + MailState.TriedFor);
    }

    /// <summary>Lets go of the text of messages that were settled longer ago than they are kept; returns how many.</summary>
    public Task<int> ForgetSettledAsync(CancellationToken ct) => source.RunAsync(Forget, ct, time.GetUtcNow() - Kept);

    /// <summary>The messages that are not settled, of every operator, each with how often it was tried.</summary>
    public Task<IReadOnlyList<WaitingMail>> WaitingAsync(CancellationToken ct) => source.ReadAsync(
        "select operator, message, attempts, state from " + WorkTables.OutgoingMail + " where state in ('queued', 'sending', 'deferred', 'unclear')",
        r => new WaitingMail(r.GetString(0), r.GetString(1), r.GetInt32(2), r.GetString(3)), ct);

    /// <summary>How many messages stand in each state.</summary>
    public async Task<IReadOnlyDictionary<string, int>> CountsAsync(CancellationToken ct)
    {
        var counts = await source.ReadAsync(
            "select state, count(*)::int from " + WorkTables.OutgoingMail + " group by state", r => (State: r.GetString(0), Count: r.GetInt32(1)), ct);
        return counts.ToDictionary(c => c.State, c => c.Count, StringComparer.Ordinal);
    }

    /// <summary>How many messages were refused, given up or came back since a moment, those aside whose reader left meanwhile.</summary>
    public async Task<int> RefusedSinceAsync(DateTimeOffset since, CancellationToken ct) => (await source.ReadAsync(
        "select count(*)::int from " + WorkTables.OutgoingMail + " where state in ('refused', 'given_up', 'bounced') and coalesce(settled_at, not_before) > $1 and last_error is distinct from $2",
        r => r.GetInt32(0), ct, since, MailState.Unsubscribed))[0];

    private TimeSpan Kept => (keeping ?? MailKeeping.Usual).For;

    // No id of a dock holds a slash or an at sign: the keys of one group are never the beginning of another's.
    internal static string Key(string digest, string? dock, string period) => dock is null ? $"{digest}/{period}" : $"{digest}@{dock}/{period}";
}

/// <summary>How long the text of a message is kept when it is settled, so that it can be looked at and sent again.</summary>
/// <param name="For">How long.</param>
public sealed record MailKeeping(TimeSpan For)
{
    /// <summary>A month.</summary>
    public static MailKeeping Usual { get; } = new(TimeSpan.FromDays(30));
}
