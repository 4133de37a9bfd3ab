using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.People;

/// <summary>Links by which somebody comes in once, to choose a passkey or a password.</summary>
public sealed class FleetInvitations(IDocumentStore store, NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>How long a link works.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromHours(72);

    /// <summary>Where a link leads, without the host.</summary>
    public static string PathOf(string secret) => $"/invitation/{secret}";

    // One statement, so that of two who come with one link one finds it used.
    private const string Use =
        "update fleetwake.mt_doc_invitation set data = jsonb_set(data, '{usedAt}', to_jsonb($2::text)) where id = $1 and data ->> 'usedAt' is null";

    /// <summary>Makes a link's secret, which is shown once. Links that the person has from before end.</summary>
    public async Task<string> MakeAsync(PersonCard person, bool signsIn, CancellationToken ct)
    {
        var secret = KeySecret.MakeToken();
        var now = time.GetUtcNow();
        await using var session = store.LightweightSession();
        session.DeleteWhere<Invitation>(i => i.PersonKey == person.Id);
        session.Insert(new Invitation(KeySecret.Hash(secret), person.Id, now, now + Lasts, signsIn));
        await session.SaveChangesAsync(ct);
        return secret;
    }

    /// <summary>The invitation of a secret and whose it is; null when there is none, it is used or too old, or the person left.</summary>
    public async Task<(Invitation Invitation, PersonCard Person)?> FindAsync(string secret, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        if (await session.LoadAsync<Invitation>(KeySecret.Hash(secret), ct) is not { UsedAt: null } found || found.UntilAt <= time.GetUtcNow()) return null;
        return await session.LoadAsync<PersonCard>(found.PersonKey, ct) is { LeftAt: null } person ? (found, person) : null;
    }

    /// <summary>Uses it up; false when somebody else just did.</summary>
    public async Task<bool> UseAsync(Invitation invitation, CancellationToken ct) =>
        await source.RunAsync(Use, ct, invitation.Id, time.GetUtcNow().ToString("O")) == 1;

    /// <summary>Until when each person's open link works, by the person's key.</summary>
    public async Task<IReadOnlyDictionary<string, DateTimeOffset>> OpenAsync(string @operator, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var session = store.QuerySession();
        var open = await session.Query<Invitation>().Where(i => i.PersonKey.StartsWith(@operator + "/") && i.UsedAt == null && i.UntilAt > now).ToListAsync(ct);
        return open.GroupBy(i => i.PersonKey, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(i => i.UntilAt), StringComparer.Ordinal);
    }
}
