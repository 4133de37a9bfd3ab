using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using Marten;

namespace FleetWake.Store.Operators;

/// <summary>Opens operators, makes their keys and keeps the recipients of what is mailed.</summary>
public sealed partial class FleetOperators(IDocumentStore store, TimeProvider time)
{
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

    /// <summary>Sets where readers of an operator's mail answer to; null for nowhere of its own.</summary>
    public async Task AnswerToAsync(string @operator, string? address, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        if (await session.LoadAsync<OperatorCard>(@operator, ct) is not { } card) return;
        session.Store(card with { ReplyTo = address });
        await session.SaveChangesAsync(ct);
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

    /// <summary>The stamp of a fact that the program itself records.</summary>
    private Entry Stamp(string zone) => ProgramEntry.At(time.GetUtcNow(), zone);
}
