using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.People;

/// <summary>Sessions of people in browsers. One that was ended is ended at its next request, for each request looks it up.</summary>
public sealed class FleetSessions(IDocumentStore store, NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>A session ends by itself after this.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(12);

    /// <summary>A session of somebody who decides on money or people ends after this without a request.</summary>
    public static readonly TimeSpan IdleOfDeciders = TimeSpan.FromMinutes(30);

    // Every request would else write.
    private static readonly TimeSpan SeenStep = TimeSpan.FromMinutes(1);

    // Not the whole document: the session may be ended at this very moment, and must stay ended.
    private const string See = "update fleetwake.mt_doc_person_session set data = jsonb_set(data, '{seenAt}', to_jsonb($2::text)) where id = $1";

    /// <summary>Begins a session and returns its secret, which only the browser keeps.</summary>
    public async Task<string> BeginAsync(PersonCard person, CancellationToken ct, string? browser = null)
    {
        var secret = KeySecret.MakeToken();
        var now = time.GetUtcNow();
        await using var session = store.LightweightSession();
        session.DeleteWhere<PersonSession>(s => s.PersonKey == person.Id && s.UntilAt < now);
        session.Insert(new PersonSession(KeySecret.Hash(secret), person.Id, now, now + Longest, null, now, browser));
        await session.SaveChangesAsync(ct);
        return secret;
    }

    /// <summary>Whose session a secret is; null when it ended, or the person left.</summary>
    public async Task<PersonCard?> RecognizeAsync(string secret, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var session = store.QuerySession();
        if (await session.LoadAsync<PersonSession>(KeySecret.Hash(secret), ct) is not { } begun) return null;
        if (await session.LoadAsync<PersonCard>(begun.PersonKey, ct) is not { LeftAt: null } person || !IsOpen(begun, person.Role, now)) return null;
        if (now - Seen(begun) >= SeenStep) await source.RunAsync(See, ct, begun.Id, now.ToString("O"));
        return person;
    }

    /// <summary>A person's open sessions, newest first.</summary>
    public async Task<IReadOnlyList<PersonSession>> OfAsync(PersonCard person, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var session = store.QuerySession();
        var all = await session.Query<PersonSession>().Where(s => s.PersonKey == person.Id).OrderByDescending(s => s.BegunAt).ToListAsync(ct);
        return [.. all.Where(s => IsOpen(s, person.Role, now))];
    }

    /// <summary>How many open sessions each person of an operator has, by the person's key.</summary>
    public async Task<IReadOnlyDictionary<string, int>> CountsAsync(string @operator, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        await using var session = store.QuerySession();
        var roles = (await session.Query<PersonCard>().Where(p => p.Operator == @operator).ToListAsync(ct)).ToDictionary(p => p.Id, p => p.Role, StringComparer.Ordinal);
        var all = await session.Query<PersonSession>().Where(s => s.PersonKey.StartsWith(@operator + "/") && s.UntilAt > now).ToListAsync(ct);
        return all.Where(s => roles.TryGetValue(s.PersonKey, out var role) && IsOpen(s, role, now))
            .GroupBy(s => s.PersonKey, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
    }

    /// <summary>Ends a session by its secret.</summary>
    public Task EndAsync(string secret, CancellationToken ct) => EndWhereAsync(s => s.Id == KeySecret.Hash(secret), ct);

    /// <summary>Ends one of a person's own sessions; false when there is none of that id.</summary>
    public async Task<bool> EndOwnAsync(PersonCard person, string id, CancellationToken ct) =>
        await EndWhereAsync(s => s.Id == id && s.PersonKey == person.Id, ct) > 0;

    /// <summary>Ends all sessions of a person, but for the one that asks, if it is named; returns how many.</summary>
    public Task<int> EndAllAsync(PersonCard person, CancellationToken ct, string? but = null)
    {
        var kept = but is null ? "" : KeySecret.Hash(but);
        return EndWhereAsync(s => s.PersonKey == person.Id && s.Id != kept, ct);
    }

    private async Task<int> EndWhereAsync(System.Linq.Expressions.Expression<Func<PersonSession, bool>> which, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        var open = (await session.Query<PersonSession>().Where(which).ToListAsync(ct)).Where(s => s.EndedAt is null).ToList();
        foreach (var begun in open) session.Store(begun with { EndedAt = time.GetUtcNow() });
        await session.SaveChangesAsync(ct);
        return open.Count;
    }

    private static DateTimeOffset Seen(PersonSession session) => session.SeenAt ?? session.BegunAt;

    private static bool IsOpen(PersonSession session, Role role, DateTimeOffset now) =>
        session.EndedAt is null && session.UntilAt > now
        && (role is not (Role.Manager or Role.Administrator) || now - Seen(session) < IdleOfDeciders);
}
