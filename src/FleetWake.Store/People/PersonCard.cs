using FleetWake.Logbook.People;

namespace FleetWake.Store.People;

/// <summary>Somebody who keeps the record: an erasable row, for name and address are personal; facts name the id only.</summary>
/// <param name="Id"><see cref="KeyOf"/> of operator and person: a person is looked up before the operator is known.</param>
/// <param name="Operator">The operator; the tenant comes from here and never from a request.</param>
/// <param name="Person">Pseudonymous id within the operator, as it stands in records, e.g. <c>mech-1</c>.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Address">Mail address, lower case; null for somebody who only signs at a dock's phone.</param>
/// <param name="Role">What the person does.</param>
/// <param name="LeftAt">When the person left; nobody signs in afterwards.</param>
public sealed record PersonCard(string Id, string Operator, string Person, string Name, string? Address, Role Role, DateTimeOffset? LeftAt = null)
{
    /// <summary>The key of a person of an operator.</summary>
    public static string KeyOf(string @operator, string person) => $"{@operator}/{person}";
}

/// <summary>The hash of a person's password.</summary>
/// <param name="Id">Key of the person.</param>
/// <param name="Hash">What the hasher made: its format, salt, rounds and hash.</param>
/// <param name="SetAt">When it was set.</param>
public sealed record PersonPassword(string Id, string Hash, DateTimeOffset SetAt);

/// <summary>A passkey of a person: the public half, which is no secret.</summary>
/// <param name="Id">Id of the credential, base64url.</param>
/// <param name="PersonKey">Key of the person.</param>
/// <param name="Handle">What the authenticator knows the person by; tells nothing of who that is.</param>
/// <param name="Name">What the person calls it.</param>
/// <param name="PublicKey">COSE public key.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="SignCount">How often it signed, as it says; 0 for those that do not count.</param>
/// <param name="Transports">How browsers reach it.</param>
/// <param name="Verifies">It asks its owner for a finger, a face or a PIN.</param>
/// <param name="Copied">It may be copied to the owner's other devices.</param>
/// <param name="IsCopied">It has been.</param>
/// <param name="UsedAt">When it last signed somebody in.</param>
public sealed record PersonPasskey(
    string Id, string PersonKey, string Handle, string Name, byte[] PublicKey, DateTimeOffset MadeAt,
    long SignCount, IReadOnlyList<string> Transports, bool Verifies, bool Copied, bool IsCopied, DateTimeOffset? UsedAt = null);

/// <summary>A way in that works once: for somebody new, or who lost the phone with the passkey.</summary>
/// <param name="Id">SHA-256 of the secret in the link, lower-case hex.</param>
/// <param name="PersonKey">Key of the person.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="UntilAt">When it ends by itself.</param>
/// <param name="SignsIn">It signs in at once, without a passkey or password being chosen.</param>
/// <param name="UsedAt">When it was used.</param>
public sealed record Invitation(string Id, string PersonKey, DateTimeOffset MadeAt, DateTimeOffset UntilAt, bool SignsIn = false, DateTimeOffset? UsedAt = null);

/// <summary>A browser in which somebody signed in. It is looked up at each request: ended here, it is ended everywhere.</summary>
/// <param name="Id">SHA-256 of the secret in the cookie, lower-case hex.</param>
/// <param name="PersonKey">Key of the person.</param>
/// <param name="BegunAt">When.</param>
/// <param name="UntilAt">When it ends by itself.</param>
/// <param name="EndedAt">When it was ended.</param>
/// <param name="SeenAt">When it was last used, to the minute.</param>
/// <param name="Browser">The browser in a few words, so that its owner knows it again.</param>
public sealed record PersonSession(
    string Id, string PersonKey, DateTimeOffset BegunAt, DateTimeOffset UntilAt, DateTimeOffset? EndedAt = null, DateTimeOffset? SeenAt = null, string? Browser = null);
