using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using Marten;

namespace FleetWake.Store.Operators;

/// <content>Who receives which digest, of which dock.</content>
public sealed partial class FleetOperators
{
    // What waits for somebody who no longer wants it is not sent; an attempt that is under way is past recall.
    private const string CancelMail =
        "update " + Schema.WorkTables.OutgoingMail + " set state = 'refused', last_error = '" + Mail.MailState.Unsubscribed + "', mime = ''::bytea"
        + " where operator = ? and recipient = ? and state in ('queued', 'deferred', 'unclear')";

    /// <summary>Subscribes an address to a digest, of one dock or of all; again changes nothing but brings back one that had unsubscribed.</summary>
    public async Task SubscribeAsync(OperatorCard @operator, string address, string digest, CancellationToken ct, string? dock = null)
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

    /// <summary>Who receives a digest now, of whichever dock (<see cref="Recipient.Dock"/>), those aside whose address takes no mail.</summary>
    public async Task<IReadOnlyList<Recipient>> RecipientsAsync(string @operator, string digest, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return [.. (await session.Query<Recipient>().Where(r => r.Digest == digest && r.Subscribed).OrderBy(r => r.Id).ToListAsync(ct)).Where(r => r.TakesMail())];
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
}
