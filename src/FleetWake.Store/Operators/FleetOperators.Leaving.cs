using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Mail;

namespace FleetWake.Store.Operators;

/// <content>What a reader finds behind the link that ends a subscription, and the way back.</content>
public sealed partial class FleetOperators
{
    /// <summary>How long somebody who left by a link may come back by it: a slip is noticed when the next one does not come.</summary>
    public static readonly TimeSpan ComeBackWithin = TimeSpan.FromDays(30);

    /// <summary>What the secret of a link is of; null when it is not known.</summary>
    public async Task<LinkedReader?> LinkedAsync(string token, CancellationToken ct)
    {
        await using var look = store.QuerySession();
        if (await look.LoadAsync<UnsubscribeToken>(token, ct) is not { } link || await look.LoadAsync<OperatorCard>(link.Operator, ct) is not { } card) return null;
        await using var session = store.QuerySession(link.Operator);
        if (await session.LoadAsync<Recipient>(link.Recipient, ct) is not { } recipient) return new LinkedReader(card, null, [], [], false);
        var all = await AddressMarks.OfAsync(session, recipient.Address, ct);
        List<Recipient> same = [recipient, .. all.Where(r => r.Id != recipient.Id && r.Digest == recipient.Digest && r.Dock == recipient.Dock)];
        var others = all.Where(r => r.Subscribed && same.TrueForAll(s => s.Id != r.Id)).OrderBy(r => r.Digest, StringComparer.Ordinal).ThenBy(r => r.Dock, StringComparer.Ordinal);
        return new LinkedReader(card, recipient, same, [.. others], MayComeBack(recipient));
    }

    /// <summary>Takes somebody back who left by a link; true also when that was done before, false when the link is not known or it is too late.</summary>
    public async Task<bool> ComeBackAsync(string token, CancellationToken ct)
    {
        if (await LinkedAsync(token, ct) is not { Operator: var card, Recipient: { } given }) return false;
        return await OfAddressAsync(card.Id, given.Address, async (session, _) =>
        {
            if (await session.LoadAsync<Recipient>(given.Id, ct) is not { } recipient) return false;
            if (recipient.Subscribed) return true;
            if (!MayComeBack(recipient)) return false;
            session.Store(recipient with { Subscribed = true, LeftAt = null });
            session.Events.Append(StreamName.Operator, new RecipientSubscribed(Stamp(card.Zone), recipient.Id, recipient.Digest, recipient.Dock));
            return true;
        }, ct);
    }

    private bool MayComeBack(Recipient recipient) => !recipient.Subscribed && recipient.LeftAt is { } left && time.GetUtcNow() - left < ComeBackWithin;
}

/// <summary>Whose link it is.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Recipient">The subscription that the link ends; null when the address was forgotten.</param>
/// <param name="Same">That, and any that an earlier version kept beside it for the same address in another spelling: they end with it.</param>
/// <param name="Others">What else the same address receives of that operator.</param>
/// <param name="MayComeBack">It left by a link lately, and may come back by it.</param>
public sealed record LinkedReader(OperatorCard Operator, Recipient? Recipient, IReadOnlyList<Recipient> Same, IReadOnlyList<Recipient> Others, bool MayComeBack);
