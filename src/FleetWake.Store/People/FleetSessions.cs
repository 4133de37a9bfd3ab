using FleetWake.Store.Operators;
using Marten;

namespace FleetWake.Store.People;

/// <summary>Sessions of people in browsers.</summary>
public sealed class FleetSessions(IDocumentStore store, TimeProvider time)
{
    /// <summary>A session ends by itself after this.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(12);

    /// <summary>Begins a session and returns its secret, which only the browser keeps.</summary>
    public async Task<string> BeginAsync(PersonCard person, CancellationToken ct)
    {
        var secret = KeySecret.MakeToken();
        var now = time.GetUtcNow();
        await using var session = store.LightweightSession();
        session.Insert(new PersonSession(KeySecret.Hash(secret), person.Id, now, now + Longest));
        await session.SaveChangesAsync(ct);
        return secret;
    }

    /// <summary>Whose session a secret is; null when it ended, or the person left.</summary>
    public async Task<PersonCard?> RecognizeAsync(string secret, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        if (await session.LoadAsync<PersonSession>(KeySecret.Hash(secret), ct) is not { EndedAt: null } begun || begun.UntilAt <= time.GetUtcNow()) return null;
        return await session.LoadAsync<PersonCard>(begun.PersonKey, ct) is { LeftAt: null } person ? person : null;
    }

    /// <summary>Ends a session.</summary>
    public async Task EndAsync(string secret, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        if (await session.LoadAsync<PersonSession>(KeySecret.Hash(secret), ct) is not { EndedAt: null } begun) return;
        session.Store(begun with { EndedAt = time.GetUtcNow() });
        await session.SaveChangesAsync(ct);
    }
}
