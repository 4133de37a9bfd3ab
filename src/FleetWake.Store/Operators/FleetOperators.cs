using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using Marten;

namespace FleetWake.Store.Operators;

/// <summary>Opens operators, makes their keys and keeps their recipients.</summary>
public sealed class FleetOperators(IDocumentStore store, TimeProvider time)
{
    // What waits for somebody who no longer wants it is not sent; an attempt that is under way is past recall.
    private const string CancelMail =
        "update " + Schema.WorkTables.OutgoingMail + " set state = 'refused', last_error = '" + Mail.MailState.Unsubscribed + "', mime = ''::bytea"
        + " where operator = ? and recipient = ? and state in ('queued', 'deferred', 'unclear')";

    // A phone that sends records must not write here each time.
    private static readonly TimeSpan UsedStep = TimeSpan.FromHours(1);

    // Not the whole document: the key may be revoked at this very moment, and must stay so.
    private const string UseKey = "update " + Schema.FleetStore.SchemaName + ".mt_doc_api_key set data = jsonb_set(data, '{usedAt}', to_jsonb(?::text)) where id = ?";

    /// <summary>Opens an operator and returns it as it is now; opening it again changes nothing.</summary>
    public async Task<OperatorCard> OpenAsync(string id, string name, string zone, CancellationToken ct)
    {
        await using var session = store.LightweightSession(id);
        if (await session.LoadAsync<OperatorCard>(id, ct) is { } open) return open;
        session.Insert(new OperatorCard(id, name, zone));
        session.Events.Append(StreamName.Operator, new OperatorOpened(Stamp(zone), name, zone));
        try
        {
            await session.SaveChangesAsync(ct);
            return new OperatorCard(id, name, zone);
        }
        catch (JasperFx.DocumentAlreadyExistsException)
        {
            return (await FindAsync(id, ct))!; // Somebody else opened it at the same moment.
        }
    }

    /// <summary>An operator by id, or null.</summary>
    public async Task<OperatorCard?> FindAsync(string id, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.LoadAsync<OperatorCard>(id, ct);
    }

    /// <summary>Every operator, by id.</summary>
    public async Task<IReadOnlyList<OperatorCard>> AllAsync(CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.Query<OperatorCard>().OrderBy(o => o.Id).ToListAsync(ct);
    }

    /// <summary>Makes a key and returns it whole: the only time it can be seen. With <paramref name="lasts"/> it ends by itself.</summary>
    public async Task<string> MakeKeyAsync(string @operator, string name, IReadOnlyList<KeyScope> scopes, CancellationToken ct, TimeSpan? lasts = null)
    {
        var (id, key) = KeySecret.Make();
        await using var session = store.LightweightSession(@operator);
        session.Insert(new ApiKey(id, @operator, name, KeySecret.Hash(key), scopes, time.GetUtcNow(), null, time.GetUtcNow() + lasts));
        await session.SaveChangesAsync(ct);
        return key;
    }

    /// <summary>The stored key that a text is, or null when it is none, was revoked or has expired.</summary>
    public async Task<ApiKey?> RecognizeAsync(string key, CancellationToken ct) =>
        await FindKeyAsync(key, ct) is { } found && !found.IsExpired(time.GetUtcNow()) ? found : null;

    /// <summary>The same, also of one that has expired, whose holder is told so. That it is used is kept, once an hour.</summary>
    public async Task<ApiKey?> FindKeyAsync(string key, CancellationToken ct)
    {
        if (KeySecret.IdOf(key) is not { } id) return null;
        await using var session = store.LightweightSession();
        var stored = await session.LoadAsync<ApiKey>(id, ct);
        if (stored is not { RevokedAt: null } || !KeySecret.Matches(key, stored.Hash)) return null;
        var now = time.GetUtcNow();
        if (stored.IsExpired(now) || now - stored.UsedAt < UsedStep) return stored;
        session.QueueSqlCommand(UseKey, now.ToString("O"), id);
        await session.SaveChangesAsync(ct);
        return stored;
    }

    /// <summary>Every key of an operator, revoked ones too, in the order in which they were made.</summary>
    public async Task<IReadOnlyList<ApiKey>> KeysAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.Query<ApiKey>().Where(k => k.Operator == @operator).OrderBy(k => k.MadeAt).ToListAsync(ct);
    }

    /// <summary>Revokes a key by its public id; false when there is none.</summary>
    public async Task<bool> RevokeKeyAsync(string id, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        if (await session.LoadAsync<ApiKey>(id, ct) is not { } key) return false;
        session.Store(key with { RevokedAt = key.RevokedAt ?? time.GetUtcNow() });
        await session.SaveChangesAsync(ct);
        return true;
    }

    /// <summary>Subscribes an address to a digest; again changes nothing but brings back one that had unsubscribed.</summary>
    public async Task SubscribeAsync(OperatorCard @operator, string address, string digest, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        var known = await session.Query<Recipient>().Where(r => r.Address == address && r.Digest == digest).FirstOrDefaultAsync(ct);
        if (known is { Subscribed: true }) return;
        var token = KeySecret.MakeToken();
        var recipient = known is null
            ? new Recipient($"r-{KeySecret.MakeToken()[..10]}", address, digest, token, true)
            : known with { Token = token, Subscribed = true };
        session.Store(recipient);
        session.Store(new UnsubscribeToken(token, @operator.Id, recipient.Id));
        session.Events.Append(StreamName.Operator, new RecipientSubscribed(Stamp(@operator.Zone), recipient.Id, digest));
        await session.SaveChangesAsync(ct);
    }

    /// <summary>Unsubscribes by the secret of a link; true even when it was done before, false when the secret is unknown.</summary>
    public async Task<bool> UnsubscribeAsync(string token, CancellationToken ct)
    {
        await using var look = store.QuerySession();
        if (await look.LoadAsync<UnsubscribeToken>(token, ct) is not { } link) return false;
        var card = await look.LoadAsync<OperatorCard>(link.Operator, ct);
        await using var session = store.LightweightSession(link.Operator);
        if (await session.LoadAsync<Recipient>(link.Recipient, ct) is { } recipient) await EndAsync(session, card!, recipient, forget: false, ct);
        return true;
    }

    /// <summary>Ends every subscription of an address; with <paramref name="forget"/>, erases the address as well. False when it is not known.</summary>
    public async Task<bool> UnsubscribeAddressAsync(OperatorCard @operator, string address, bool forget, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        var known = await session.Query<Recipient>().Where(r => r.Address == address).ToListAsync(ct);
        foreach (var recipient in known) await EndAsync(session, @operator, recipient, forget, ct);
        return known.Count > 0;
    }

    private async Task EndAsync(IDocumentSession session, OperatorCard card, Recipient recipient, bool forget, CancellationToken ct)
    {
        if (recipient.Subscribed) session.Events.Append(StreamName.Operator, new RecipientUnsubscribed(Stamp(card.Zone), recipient.Id, recipient.Digest));
        session.QueueSqlCommand(CancelMail, card.Id, recipient.Id);
        if (forget)
        {
            session.Delete<Recipient>(recipient.Id);
            session.Delete<UnsubscribeToken>(recipient.Token);
        }
        else
        {
            session.Store(recipient with { Subscribed = false });
        }

        await session.SaveChangesAsync(ct);
    }

    /// <summary>Who receives a digest now.</summary>
    public async Task<IReadOnlyList<Recipient>> RecipientsAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).OrderBy(r => r.Id).ToListAsync(ct);
    }

    /// <summary>The stamp of a fact that the program itself records.</summary>
    private Entry Stamp(string zone) => ProgramEntry.At(time.GetUtcNow(), zone);
}
