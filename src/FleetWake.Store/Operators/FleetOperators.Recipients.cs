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

    /// <summary>Subscribes an address to a digest, of one dock or of all; again changes nothing but brings back one that had unsubscribed.</summary>
    public Task SubscribeAsync(OperatorCard @operator, string address, string digest, CancellationToken ct, string? dock = null) =>
        Contention.SettleAsync(() => SubscribeOnceAsync(@operator, address, digest, dock, ct), ct);

    private async Task SubscribeOnceAsync(OperatorCard @operator, string address, string digest, string? dock, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        var known = (await session.Query<Recipient>().Where(r => r.Address == address && r.Digest == digest).ToListAsync(ct)).FirstOrDefault(r => r.Dock == dock);
        if (known is { Subscribed: true }) return;
        var token = KeySecret.MakeToken();
        var recipient = known is null
            ? new Recipient($"r-{KeySecret.MakeToken()[..10]}", address, digest, token, true) { Dock = dock }
            : known with { Token = token, Subscribed = true, AskedAt = null, ConfirmHash = null };
        session.Store(recipient);
        session.Store(new UnsubscribeToken(token, @operator.Id, recipient.Id));
        session.Events.Append(StreamName.Operator, new RecipientSubscribed(Stamp(@operator.Zone), recipient.Id, digest, dock));
        await session.SaveChangesAsync(ct);
    }

    /// <summary>Unsubscribes by the secret of a link; true even when it was done before, false when the secret is unknown.</summary>
    public async Task<bool> UnsubscribeAsync(string token, CancellationToken ct)
    {
        await using var look = store.QuerySession();
        if (await look.LoadAsync<UnsubscribeToken>(token, ct) is not { } link) return false;
        var card = await look.LoadAsync<OperatorCard>(link.Operator, ct);
        await using var session = store.QuerySession(link.Operator);
        if (await session.LoadAsync<Recipient>(link.Recipient, ct) is { } recipient) await Contention.SettleAsync(() => EndAsync(card!, recipient, forget: false, ct), ct);
        return true;
    }

    /// <summary>Ends every subscription of an address; with <paramref name="forget"/>, erases the address as well. False when it is not known.</summary>
    public async Task<bool> UnsubscribeAddressAsync(OperatorCard @operator, string address, bool forget, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator.Id);
        var known = await session.Query<Recipient>().Where(r => r.Address == address).ToListAsync(ct);
        foreach (var recipient in known) await Contention.SettleAsync(() => EndAsync(@operator, recipient, forget, ct), ct);
        return known.Count > 0;
    }

    /// <summary>Who receives a digest now, of whichever dock (<see cref="Recipient.Dock"/>), those aside whose address takes no mail.</summary>
    public async Task<IReadOnlyList<Recipient>> RecipientsAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return [.. (await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).OrderBy(r => r.Id).ToListAsync(ct)).Where(r => r.TakesMail())];
    }

    /// <summary>Who subscribed to a digest, of whichever dock, also those whose address takes no mail now: they are to be told of as left out.</summary>
    public async Task<IReadOnlyList<Recipient>> SubscribersAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).OrderBy(r => r.Id).ToListAsync(ct);
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
        Contention.SettleAsync(() => TryAgainOnceAsync(@operator, address, by, ct), ct);

    private async Task<bool> TryAgainOnceAsync(OperatorCard @operator, string address, string? by, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        var marked = (await session.Query<Recipient>().Where(r => r.Address == address).ToListAsync(ct)).Where(r => r.NoMailSince is not null).ToList();
        foreach (var recipient in marked)
        {
            session.Store(recipient with { NoMailSince = null, NoMailWhy = null });
            session.Events.Append(StreamName.Operator, new RecipientTriedAgain(ProgramEntry.At(time.GetUtcNow(), @operator.Zone, by), recipient.Id));
        }

        await session.SaveChangesAsync(ct);
        return marked.Count > 0;
    }

    private async Task EndAsync(OperatorCard card, Recipient recipient, bool forget, CancellationToken ct)
    {
        await using var connection = store.Storage.Database.CreateConnection();
        await connection.OpenAsync(ct);
        await using var transaction = await connection.BeginTransactionAsync(ct);
        var now = time.GetUtcNow();
        var stopped = new List<string>();
        await using (var command = new NpgsqlCommand(CancelMail, connection) { Parameters = { new() { Value = card.Id }, new() { Value = recipient.Id }, new() { Value = now } } })
        await using (var reader = await command.ExecuteReaderAsync(ct))
        {
            while (await reader.ReadAsync(ct)) stopped.Add(reader.GetString(0));
        }

        await using var session = store.OpenSession(SessionOptions.ForTransaction(transaction).For(card.Id));
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
            session.Store(recipient with { Subscribed = false, AskedAt = null, ConfirmHash = null });
        }

        await session.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
    }
}
