using System.Buffers.Text;
using FleetWake.Store.People;
using Microsoft.AspNetCore.Identity;

namespace FleetWake.Web.SignIn;

/// <summary>
/// People as the framework's passkey handler asks for them, by handle. Of the store that it wants, passkeys are all that is
/// used: the rest of its account keeping is ours, and says so.
/// </summary>
internal sealed class PasskeyUsers(FleetPasskeys passkeys, TimeProvider time) : IUserPasskeyStore<PersonCard>
{
    public Task<string> GetUserIdAsync(PersonCard user, CancellationToken ct) => Task.FromResult(FleetPasskeys.HandleOf(user));

    public Task<string?> GetUserNameAsync(PersonCard user, CancellationToken ct) => Task.FromResult<string?>(user.Id);

    public Task<PersonCard?> FindByIdAsync(string userId, CancellationToken ct) => passkeys.OwnerAsync(userId, ct);

    public async Task<PersonCard?> FindByPasskeyIdAsync(byte[] credentialId, CancellationToken ct) =>
        await passkeys.FindAsync(Base64Url.EncodeToString(credentialId), ct) is { } passkey ? await passkeys.OwnerAsync(passkey.Handle, ct) : null;

    public async Task<UserPasskeyInfo?> FindPasskeyAsync(PersonCard user, byte[] credentialId, CancellationToken ct) =>
        await passkeys.FindAsync(Base64Url.EncodeToString(credentialId), ct) is { } passkey && passkey.PersonKey == user.Id ? Info(passkey) : null;

    public async Task<IList<UserPasskeyInfo>> GetPasskeysAsync(PersonCard user, CancellationToken ct) =>
        [.. (await passkeys.OfAsync(user.Id, ct)).Select(Info)];

    public async Task AddOrUpdatePasskeyAsync(PersonCard user, UserPasskeyInfo passkey, CancellationToken ct)
    {
        var id = Base64Url.EncodeToString(passkey.CredentialId);
        var known = await passkeys.FindAsync(id, ct);
        var row = new PersonPasskey(
            id, user.Id, FleetPasskeys.HandleOf(user), passkey.Name ?? known?.Name ?? "", passkey.PublicKey, passkey.CreatedAt, passkey.SignCount,
            passkey.Transports ?? [], passkey.IsUserVerified, passkey.IsBackupEligible, passkey.IsBackedUp, known is null ? null : time.GetUtcNow());
        await (known is null ? passkeys.KeepAsync(row, ct) : passkeys.RenewAsync(row, ct));
    }

    public Task RemovePasskeyAsync(PersonCard user, byte[] credentialId, CancellationToken ct) => passkeys.TakeOffAsync(user, Base64Url.EncodeToString(credentialId), ct);

    public Task SetUserNameAsync(PersonCard user, string? userName, CancellationToken ct) => throw NotOurs();

    public Task<string?> GetNormalizedUserNameAsync(PersonCard user, CancellationToken ct) => GetUserNameAsync(user, ct);

    public Task SetNormalizedUserNameAsync(PersonCard user, string? normalizedName, CancellationToken ct) => throw NotOurs();

    public Task<PersonCard?> FindByNameAsync(string normalizedUserName, CancellationToken ct) => throw NotOurs();

    public Task<IdentityResult> CreateAsync(PersonCard user, CancellationToken ct) => throw NotOurs();

    public Task<IdentityResult> UpdateAsync(PersonCard user, CancellationToken ct) => throw NotOurs();

    public Task<IdentityResult> DeleteAsync(PersonCard user, CancellationToken ct) => throw NotOurs();

    public void Dispose()
    {
        // Holds nothing.
    }

    // What was attested is not kept: makers of authenticators are not judged here, and it names the model.
    private static UserPasskeyInfo Info(PersonPasskey k) => new(
        Base64Url.DecodeFromChars(k.Id), k.PublicKey, k.MadeAt, (uint)k.SignCount, [.. k.Transports], k.Verifies, k.Copied, k.IsCopied, [], [])
    { Name = k.Name };

    private static NotSupportedException NotOurs() => new("Accounts are kept by FleetPeople.");
}
