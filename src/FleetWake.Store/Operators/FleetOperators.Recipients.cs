using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.People;
using FleetWake.Store.Mail;
using FleetWake.Store.Schema;
using Marten;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.Operators;

/// <content>Who receives which digest, of which dock.</content>
public sealed partial class FleetOperators
{
    // What waits for somebody who no longer wants it is not sent; an attempt that is under way is past recall.
    private const string CancelMail =
        "update " + WorkTables.OutgoingMail + " set state = '" + MailState.Unsubscribed + "', last_error = '" + MailState.Unsubscribed + "', mime = ''::bytea, settled_at = $3"
        + " where operator = $1 and recipient = $2 and state in ('queued', 'deferred', 'unclear') returning message";

    // The address stood in what was sent to it, too; the domain alone may name a person.
    private const string ForgetMail = "update " + WorkTables.OutgoingMail + " set mime = ''::bytea, host = null where operator = $1 and recipient = $2";

    /// <summary>
    /// Subscribes an address to a digest, of one dock or of all; again changes nothing but brings back one that had unsubscribed.
    /// Addresses that differ in upper and lower case alone are one: no mail server in use tells them apart, and nobody wants it twice. So are docks,
    /// and the last spelling counts.
    /// </summary>
    public Task SubscribeAsync(OperatorCard @operator, string address, string digest, CancellationToken ct, string? dock = null) =>
        OfAddressAsync(@operator.Id, address, async (session, _) =>
        {
            var known = Same(await AddressMarks.OfAsync(session, address, ct), digest, dock);
            if (known is { Subscribed: true } && known.Dock == dock) return false;
            var token = KeySecret.MakeToken();
            var recipient = known is null
                ? new Recipient($"r-{KeySecret.MakeToken()[..10]}", address, digest, token, true) { Dock = dock }
                : known with { Dock = dock, Token = token, Subscribed = true, ConfirmHash = null, LeftAt = null };
            session.Store(recipient);
            session.Store(new UnsubscribeToken(token, @operator.Id, recipient.Id));
            session.Events.Append(StreamName.Operator, new RecipientSubscribed(Stamp(@operator.Zone), recipient.Id, digest, dock));
            return true;
        }, ct);

    /// <summary>Unsubscribes by the secret of a link; true even when it was done before, false when the secret is unknown.</summary>
    /// <param name="token">The secret.</param>
    /// <param name="ct">Ends the wait.</param>
    /// <param name="byItself">Its reader did so, and may come back by the same link; nobody comes back whom somebody else took off.</param>
    public async Task<bool> UnsubscribeAsync(string token, CancellationToken ct, bool byItself = false)
    {
        if (await LinkedAsync(token, ct) is not { } linked) return false;
        foreach (var recipient in linked.Same) await EndAsync(linked.Operator, recipient, forget: false, ct, byItself);
        return true;
    }

    /// <summary>Ends every subscription of an address; with <paramref name="forget"/>, erases the address as well. False when it is not known.</summary>
    public async Task<bool> UnsubscribeAddressAsync(OperatorCard @operator, string address, bool forget, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator.Id);
        var known = await AddressMarks.OfAsync(session, address, ct);
        foreach (var recipient in known) await EndAsync(@operator, recipient, forget, ct);
        return known.Count > 0;
    }

    /// <summary>Who receives a digest now, of whichever dock (<see cref="Recipient.Dock"/>), those aside whose address takes no mail.</summary>
    public async Task<IReadOnlyList<Recipient>> RecipientsAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return [.. (await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).OrderBy(r => r.Id).ToListAsync(ct)).Where(r => r.TakesMail())];
    }

    /// <summary>
    /// Who subscribed to a digest, of whichever dock, also those whose address takes no mail now: they are to be told of as left out. An address
    /// that an earlier version kept twice, in two spellings, is one of them.
    /// </summary>
    public async Task<IReadOnlyList<Recipient>> SubscribersAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var all = await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).OrderBy(r => r.Id).ToListAsync(ct);
        return [.. all.DistinctBy(r => (r.Address.ToUpperInvariant(), r.Dock))];
    }

    /// <summary>Everybody who has to do with what is mailed: who receives, who left, who was asked and has not answered, by address.</summary>
    public async Task<IReadOnlyList<Recipient>> AllRecipientsAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return [.. (await session.Query<Recipient>().ToListAsync(ct)).OrderBy(r => r.Address, StringComparer.OrdinalIgnoreCase).ThenBy(r => r.Digest, StringComparer.Ordinal).ThenBy(r => r.Dock, StringComparer.Ordinal)];
    }

    /// <summary>How many addresses that should receive something take no mail.</summary>
    public async Task<int> NoMailAsync(string @operator, CancellationToken ct) =>
        (await AllRecipientsAsync(@operator, ct)).Where(r => r is { Subscribed: true, NoMailSince: not null }).DistinctBy(r => r.Address).Count();

    /// <summary>Lets an address be tried again that a server said takes no mail, in all its subscriptions; false when nothing was said of it.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="address">The address.</param>
    /// <param name="by">Pseudonymous id of the person who lets it; null at the command line.</param>
    /// <param name="ct">Ends the wait.</param>
    public Task<bool> TryAgainAsync(OperatorCard @operator, string address, string? by, CancellationToken ct) =>
        OfAddressAsync(@operator.Id, address, async (session, _) =>
        {
            var marked = (await AddressMarks.OfAsync(session, address, ct)).Where(r => r.NoMailSince is not null).ToList();
            foreach (var recipient in marked)
            {
                session.Store(recipient with { NoMailSince = null, NoMailWhy = null });
                session.Events.Append(StreamName.Operator, new RecipientTriedAgain(ProgramEntry.At(time.GetUtcNow(), @operator.Zone, by), recipient.Id));
            }

            return marked.Count > 0;
        }, ct);

    /// <summary>The subscription of an address to a digest of a dock, whose letters may differ in case.</summary>
    private static Recipient? Same(IReadOnlyList<Recipient> ofAddress, string digest, string? dock) =>
        ofAddress.Where(r => r.Digest == digest && string.Equals(r.Dock, dock, StringComparison.OrdinalIgnoreCase))
            .OrderByDescending(r => r.Subscribed).ThenByDescending(r => r.Dock == dock).FirstOrDefault();

    private Task<bool> EndAsync(OperatorCard card, Recipient given, bool forget, CancellationToken ct, bool byItself = false) => OfAddressAsync(card.Id, given.Address, async (session, connection) =>
    {
        // As it stands now: a server may have said something of it meanwhile.
        if (await session.LoadAsync<Recipient>(given.Id, ct) is not { } recipient) return false;
        var now = time.GetUtcNow();
        var stopped = new List<string>();
        await using (var command = new NpgsqlCommand(CancelMail, connection) { Parameters = { new() { Value = card.Id }, new() { Value = recipient.Id }, new() { Value = now } } })
        await using (var reader = await command.ExecuteReaderAsync(ct))
        {
            while (await reader.ReadAsync(ct)) stopped.Add(reader.GetString(0));
        }

        foreach (var message in stopped) session.Events.Append(StreamName.Mail(message), new MailUnsubscribed(ProgramEntry.At(now, card.Zone)));
        if (recipient.Subscribed) session.Events.Append(StreamName.Operator, new RecipientUnsubscribed(Stamp(card.Zone), recipient.Id, recipient.Digest));
        if (forget)
        {
            await using var erase = new NpgsqlCommand(ForgetMail, connection) { Parameters = { new() { Value = card.Id }, new() { Value = recipient.Id } } };
            await erase.ExecuteNonQueryAsync(ct);
            session.Delete<Recipient>(recipient.Id);
            session.Delete<UnsubscribeToken>(recipient.Token);
            if (recipient.ConfirmHash is { } hash) session.Delete<ConfirmToken>(hash);
        }
        else
        {
            // When it was asked last stays: leaving is no way to be asked again and again.
            session.Store(recipient with { Subscribed = false, ConfirmHash = null, LeftAt = !byItself ? null : recipient.Subscribed ? now : recipient.LeftAt });
        }

        return true;
    }, ct);

    /// <summary>Does something to the subscriptions of one address in one transaction, one after the other: no two of them read the same and both write.</summary>
    private Task<T> OfAddressAsync<T>(string @operator, string address, Func<IDocumentSession, NpgsqlConnection, Task<T>> act, CancellationToken ct) => Contention.SettleAsync(
        async () =>
        {
            await using var connection = store.Storage.Database.CreateConnection();
            await connection.OpenAsync(ct);
            await using var transaction = await connection.BeginTransactionAsync(ct);
            await AddressMarks.LockAsync(connection, @operator, address, ct);
            await using var session = store.OpenSession(SessionOptions.ForTransaction(transaction).For(@operator));
            var done = await act(session, connection);
            await session.SaveChangesAsync(ct);
            await transaction.CommitAsync(ct);
            return done;
        },
        ct);
}
