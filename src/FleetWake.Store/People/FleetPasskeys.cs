using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Marten;
using Marten.Exceptions;

namespace FleetWake.Store.People;

/// <summary>Ways in that a person has: passkeys and a password.</summary>
public sealed class FleetPasskeys(IDocumentStore store, TimeProvider time)
{
    /// <summary>What an authenticator knows a person by: made of the key, and tells nothing of it.</summary>
    public static string HandleOf(PersonCard person) => Base64Url.EncodeToString(SHA256.HashData(Encoding.UTF8.GetBytes("passkey\n" + person.Id)));

    /// <summary>A person's passkeys, in the order in which they were made.</summary>
    public async Task<IReadOnlyList<PersonPasskey>> OfAsync(string personKey, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.Query<PersonPasskey>().Where(k => k.PersonKey == personKey).OrderBy(k => k.MadeAt).ToListAsync(ct);
    }

    /// <summary>A passkey by the id of its credential, or null.</summary>
    public async Task<PersonPasskey?> FindAsync(string id, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.LoadAsync<PersonPasskey>(id, ct);
    }

    /// <summary>Who has a passkey under a handle; null when there is none, or the person left.</summary>
    public async Task<PersonCard?> OwnerAsync(string handle, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        var passkey = await session.Query<PersonPasskey>().Where(k => k.Handle == handle).FirstOrDefaultAsync(ct);
        return passkey is not null && await session.LoadAsync<PersonCard>(passkey.PersonKey, ct) is { LeftAt: null } person ? person : null;
    }

    /// <summary>Keeps a new passkey.</summary>
    public async Task KeepAsync(PersonPasskey passkey, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        session.Insert(passkey);
        await session.SaveChangesAsync(ct);
    }

    /// <summary>Keeps that a passkey was used. One that was taken off at that moment stays off.</summary>
    public Task RenewAsync(PersonPasskey passkey, CancellationToken ct) => UpdateAsync(passkey, ct);

    /// <summary>Keeps a password hashed anew. One that was taken off at that moment stays off.</summary>
    public Task RenewPasswordAsync(PersonPassword password, CancellationToken ct) => UpdateAsync(password, ct);

    /// <summary>Takes a passkey off; false when it is not the person's, or the last way in.</summary>
    public async Task<bool> TakeOffAsync(PersonCard person, string id, CancellationToken ct)
    {
        var all = await OfAsync(person.Id, ct);
        if (all.All(k => k.Id != id) || (all.Count == 1 && await PasswordAsync(person.Id, ct) is null)) return false;
        await using var session = store.LightweightSession();
        session.Delete<PersonPasskey>(id);
        await session.SaveChangesAsync(ct);
        return true;
    }

    /// <summary>Takes every way in off and ends the sessions: whoever found the lost device comes in no more.</summary>
    public async Task TakeAllOffAsync(PersonCard person, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        session.DeleteWhere<PersonPasskey>(k => k.PersonKey == person.Id);
        session.DeleteWhere<PersonSession>(s => s.PersonKey == person.Id);
        session.Delete<PersonPassword>(person.Id);
        await session.SaveChangesAsync(ct);
    }

    /// <summary>Keys of those of an operator who have a passkey or a password.</summary>
    public async Task<IReadOnlySet<string>> WithAWayInAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        var keys = await session.Query<PersonPasskey>().Where(k => k.PersonKey.StartsWith(@operator + "/")).Select(k => k.PersonKey).ToListAsync(ct);
        var passwords = await session.Query<PersonPassword>().Where(p => p.Id.StartsWith(@operator + "/")).Select(p => p.Id).ToListAsync(ct);
        return keys.Concat(passwords).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>A person's password, or null.</summary>
    public async Task<PersonPassword?> PasswordAsync(string personKey, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.LoadAsync<PersonPassword>(personKey, ct);
    }

    /// <summary>Sets a person's password.</summary>
    public async Task SetPasswordAsync(PersonCard person, string hash, CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        session.Store(new PersonPassword(person.Id, hash, time.GetUtcNow()));
        await session.SaveChangesAsync(ct);
    }

    private async Task UpdateAsync<T>(T row, CancellationToken ct)
        where T : notnull
    {
        await using var session = store.LightweightSession();
        session.Update(row);
        try
        {
            await session.SaveChangesAsync(ct);
        }
        catch (NonExistentDocumentException)
        {
            // Taken off meanwhile, and so it stays.
        }
    }
}
