using FleetWake.Logbook.Entries;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>What went out, to whom, with which result.</summary>
public sealed class MailReading(IDocumentStore store, NpgsqlDataSource source)
{
    private const string Columns =
        "select message, digest, period, dock, subject, recipient, state, attempts, unclear, coalesce(issued_at, not_before) as issued,"
        + " case when state in ('queued', 'deferred', 'unclear') then not_before end, settled_at, last_error, message_id, again_of, octet_length(mime) > 0 from " + WorkTables.OutgoingMail;

    private const string List =
        Columns + " where operator = $1 and ($2::text is null or state = $2) and ($3::text is null or digest = $3) and ($4::text is null or dock = $4)"
        + " and ($5::text is null or recipient = $5) and (not $6 or unclear > 0)"
        + " and ($7::timestamptz is null or coalesce(issued_at, not_before) < $7 or (coalesce(issued_at, not_before) = $7 and message collate \"C\" > $8))"
        + " order by issued desc, message collate \"C\" limit $9";

    private const string One = Columns + " where operator = $1 and message = $2";

    /// <summary>Messages, newest first.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="filter">Which.</param>
    /// <param name="after">The message that the page before ended with; null for the first page.</param>
    /// <param name="most">How many at the most.</param>
    /// <param name="ct">Ends the wait.</param>
    public Task<IReadOnlyList<MailLine>> ListAsync(string @operator, MailFilter filter, (DateTimeOffset IssuedAt, string Message)? after, int most, CancellationToken ct) =>
        source.ReadAsync(List, Line, ct, @operator, filter.State, filter.Digest, filter.Dock, filter.Recipient, filter.Unclear, after?.IssuedAt, after?.Message ?? "", most);

    /// <summary>One message; null when there is none of that key.</summary>
    public async Task<MailLine?> FindAsync(string @operator, string message, CancellationToken ct) =>
        (await source.ReadAsync(One, Line, ct, @operator, message)).FirstOrDefault();

    /// <summary>What became of a message, in order.</summary>
    public async Task<IReadOnlyList<MailStep>> HistoryAsync(string @operator, string message, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return [.. (await session.Events.FetchStreamAsync(StreamName.Mail(message), token: ct)).Select(e => e.Data).OfType<IFact>().Select(MailStep.Of)];
    }

    /// <summary>The message itself; empty when it is not kept any more.</summary>
    public async Task<byte[]> MimeAsync(string @operator, string message, CancellationToken ct) =>
        (await source.ReadAsync("select mime from " + WorkTables.OutgoingMail + " where operator = $1 and message = $2", r => r.GetFieldValue<byte[]>(0), ct, @operator, message)).FirstOrDefault() ?? [];

    private static MailLine Line(NpgsqlDataReader r) => new(
        r.GetString(0), r.Text(1), r.Text(2), r.Text(3), r.Text(4), r.GetString(5), r.GetString(6), r.GetInt32(7), r.GetInt32(8),
        r.Moment(9), r.MaybeMoment(10), r.MaybeMoment(11), r.Text(12), r.Text(13), r.Text(14), r.GetBoolean(15));
}
