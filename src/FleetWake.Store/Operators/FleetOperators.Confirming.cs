using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.People;
using FleetWake.Store.Mail;
using Marten;

namespace FleetWake.Store.Operators;

/// <content>Subscribing an address by asking it: whoever types an address into a page may have mistyped it, or mean somebody harm.</content>
public sealed partial class FleetOperators
{
    /// <summary>How long the link of the question is good.</summary>
    public static readonly TimeSpan ConfirmWithin = TimeSpan.FromDays(7);

    /// <summary>An address is asked again after this long at the earliest: a form must not be a way to flood somebody.</summary>
    public static readonly TimeSpan AskAgainAfter = TimeSpan.FromHours(24);

    /// <summary>Asks an address by mail whether it wants a digest, and queues that message; nothing else is sent to it until it says so.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="address">The address.</param>
    /// <param name="digest">Which digest.</param>
    /// <param name="dock">Of which dock; null for every dock.</param>
    /// <param name="by">Pseudonymous id of who has it asked; null at the command line.</param>
    /// <param name="question">The message, for the recipient and the secret of its link.</param>
    /// <param name="ct">Ends the wait.</param>
    public Task<Asked> AskAsync(
        OperatorCard @operator, string address, string digest, string? dock, string? by, Func<Recipient, string, DateTimeOffset, NewMail> question, CancellationToken ct) =>
        OfAddressAsync(@operator.Id, address, async (session, _) =>
        {
            var now = time.GetUtcNow();
            var same = await AddressMarks.OfAsync(session, address, ct);
            if (same.Any(r => r.NoMailSince is not null)) return Asked.TakesNoMail;
            var known = Same(same, digest, dock);
            if (known is { Subscribed: true }) return Asked.ReceivesIt;

            // Over all that it could be asked about: four digests of ten docks are forty questions otherwise.
            if (same.Any(r => r.AskedAt is { } asked && now - asked < AskAgainAfter)) return Asked.AskedLately;
            var (way, secret) = (KeySecret.MakeToken(), KeySecret.MakeToken());
            var recipient = (known ?? new Recipient($"r-{KeySecret.MakeToken()[..10]}", address, digest, way, false) { Dock = dock }) with { Dock = dock, AskedAt = now, ConfirmHash = HashOf(secret), Token = way };
            session.Store(recipient);
            session.Store(new UnsubscribeToken(way, @operator.Id, recipient.Id));
            session.Store(new ConfirmToken(recipient.ConfirmHash!, @operator.Id, recipient.Id));
            session.Events.Append(StreamName.Operator, new RecipientAsked(ProgramEntry.At(now, @operator.Zone, by), recipient.Id, digest, dock));
            MailLedger.Add(session, @operator, DigestNames.Confirmation, $"{now:yyyy-MM-dd}", question(recipient, secret, now), now);
            return Asked.Now;
        }, ct);

    /// <summary>What a link asks about, while it is good; null when it is not known or not good any more.</summary>
    public async Task<(OperatorCard Operator, Recipient Recipient)?> AskedAsync(string secret, CancellationToken ct)
    {
        await using var look = store.QuerySession();
        if (await look.LoadAsync<ConfirmToken>(HashOf(secret), ct) is not { } link) return null;
        await using var session = store.QuerySession(link.Operator);
        return await session.LoadAsync<Recipient>(link.Recipient, ct) is { } recipient && recipient.ConfirmHash == link.Id && (recipient.Subscribed || time.GetUtcNow() - recipient.AskedAt < ConfirmWithin)
            ? ((await look.LoadAsync<OperatorCard>(link.Operator, ct))!, recipient)
            : null;
    }

    /// <summary>Subscribes who was asked; true also when it was done before, false when the link is not known or not good any more.</summary>
    public async Task<bool> ConfirmAsync(string secret, CancellationToken ct)
    {
        if (await AskedAsync(secret, ct) is not var (card, given)) return false;
        return await OfAddressAsync(card.Id, given.Address, async (session, _) =>
        {
            // As it stands now: it may have been ended meanwhile, by the other link of the message.
            if (await session.LoadAsync<Recipient>(given.Id, ct) is not { } recipient || recipient.ConfirmHash != given.ConfirmHash) return false;
            if (recipient.Subscribed) return true;
            session.Store(recipient with { Subscribed = true, AskedAt = null, LeftAt = null });
            session.Events.Append(StreamName.Operator, new RecipientSubscribed(Stamp(card.Zone), recipient.Id, recipient.Digest, recipient.Dock));
            return true;
        }, ct);
    }

    private static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}

/// <summary>What came of asking an address.</summary>
public enum Asked
{
    /// <summary>The question is on its way.</summary>
    Now,

    /// <summary>It was asked lately, and has not answered.</summary>
    AskedLately,

    /// <summary>It receives that digest already.</summary>
    ReceivesIt,

    /// <summary>A server said that it takes no mail.</summary>
    TakesNoMail,
}

/// <summary>Finds a recipient by the secret of the link that confirms it.</summary>
/// <param name="Id">SHA-256 of the secret, lower-case hex.</param>
/// <param name="Operator">The operator.</param>
/// <param name="Recipient">The recipient.</param>
public sealed record ConfirmToken(string Id, string Operator, string Recipient);
