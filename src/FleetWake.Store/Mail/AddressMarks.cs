using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Marten;
using Marten.Linq.MatchesSql;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>Addresses that take no mail: marked when a server says so for good, and let go by a person.</summary>
internal static class AddressMarks
{
    // What is being sent at the moment is past recall; its own answer settles it.
    private const string Stop =
        "update " + WorkTables.OutgoingMail + " set state = '" + MailState.GivenUp + "', last_error = $3, settled_at = $4"
        + " where operator = $1 and recipient = any($2) and state in ('queued', 'deferred', 'unclear') returning message, attempts";

    /// <summary>Waits until nobody else changes subscriptions of an address, and keeps others waiting until the transaction ends.</summary>
    public static async Task LockAsync(NpgsqlConnection connection, string @operator, string address, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand("select pg_advisory_xact_lock(hashtextextended($1 || '/' || lower($2), 0))", connection)
        {
            Parameters = { new() { Value = @operator }, new() { Value = address } },
        };
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>The subscriptions of an address, in whichever case it was typed.</summary>
    public static Task<IReadOnlyList<Recipient>> OfAsync(IQuerySession session, string address, CancellationToken ct) =>
        session.Query<Recipient>().Where(r => r.MatchesSql("lower(d.data ->> 'address') = lower(?)", address)).ToListAsync(ct);

    /// <summary>What the ledger says of a message that is not sent, for its address takes none.</summary>
    /// <param name="why">What the server said of the address.</param>
    public static string WhyNot(string? why) => $"the address takes no mail: {why}".TrimEnd(' ', ':');

    /// <summary>Marks every subscription of the address of a recipient, and lets go of what waits for it, in a session that the caller saves.</summary>
    /// <param name="session">The session.</param>
    /// <param name="connection">The connection on whose transaction the session works.</param>
    /// <param name="recipient">Pseudonymous id of the recipient.</param>
    /// <param name="message">The message that told it.</param>
    /// <param name="why">What the server said, without the address.</param>
    /// <param name="now">The moment.</param>
    /// <param name="ct">Ends the wait.</param>
    public static async Task MarkAsync(IDocumentSession session, NpgsqlConnection connection, string recipient, string message, string why, DateTimeOffset now, CancellationToken ct)
    {
        if (await session.LoadAsync<Recipient>(recipient, ct) is not { } told) return;
        await LockAsync(connection, session.TenantId, told.Address, ct);
        var all = await OfAsync(session, told.Address, ct);
        foreach (var same in all.Where(r => r.NoMailSince is null))
        {
            session.Store(same with { NoMailSince = now, NoMailWhy = why });
            session.Events.Append(StreamName.Operator, new RecipientTakesNoMail(ProgramEntry.At(now, "UTC"), same.Id, message, why));
        }

        var said = WhyNot(why);
        await using var command = new NpgsqlCommand(Stop, connection)
        {
            Parameters = { new() { Value = session.TenantId }, new() { Value = all.Select(r => r.Id).ToArray() }, new() { Value = said }, new() { Value = now } },
        };
        await using var reader = await command.ExecuteReaderAsync(ct);
        while (await reader.ReadAsync(ct))
            session.Events.Append(StreamName.Mail(reader.GetString(0)), new MailGivenUp(ProgramEntry.At(now, "UTC"), reader.GetInt32(1), said));
    }

    /// <summary>The options for an operator's session.</summary>
    public static SessionOptions For(this SessionOptions options, string @operator)
    {
        options.TenantId = @operator;
        return options;
    }
}
