using FleetWake.Store.Operators;

namespace FleetWake.Store.Devices;

/// <summary>A phone that was given to a dock. It is looked up by its id before the operator is known, so that the operator comes from here and never from a request.</summary>
/// <param name="Id">Its id: the public part of its token, and what its records name.</param>
/// <param name="Operator">The operator.</param>
/// <param name="Dock">The dock.</param>
/// <param name="Name">Name for people, e.g. "phone by the fuel pump".</param>
/// <param name="PublicKey">Public half of its key (a JWK of the curve P-256); the private half never leaves the phone.</param>
/// <param name="Hash">SHA-256 of its token, lower-case hex. A token carries 256 random bits, so a slow hash would add nothing.</param>
/// <param name="TokenUntil">When the token ends.</param>
/// <param name="FormerHash">The same of the token before it.</param>
/// <param name="FormerUntil">Until when that one is still taken: the answer that brought the new one may have been lost.</param>
/// <param name="EnrolledAt">When it was enrolled.</param>
/// <param name="SeenAt">When it was last heard of, to the minute.</param>
/// <param name="RevokedAt">When it was revoked.</param>
public sealed record DeviceCard(
    string Id, string Operator, string Dock, string Name, string PublicKey, string Hash, DateTimeOffset TokenUntil,
    string? FormerHash, DateTimeOffset? FormerUntil, DateTimeOffset EnrolledAt, DateTimeOffset? SeenAt, DateTimeOffset? RevokedAt)
{
    /// <summary>What a token is worth.</summary>
    public TokenStanding Judge(string token, DateTimeOffset now)
    {
        var own = KeySecret.Matches(token, Hash);
        var former = !own && FormerHash is { } hash && KeySecret.Matches(token, hash);
        if (RevokedAt is not null) return own || former ? TokenStanding.Revoked : TokenStanding.NotKnown;
        return (own && now < TokenUntil) || (former && now < FormerUntil) ? TokenStanding.Good : TokenStanding.Expired;
    }
}

/// <summary>What the token of a known device is worth.</summary>
public enum TokenStanding
{
    /// <summary>It opens the dock.</summary>
    Good,

    /// <summary>Its time is over, or a newer one took its place: the phone asks for another by its key.</summary>
    Expired,

    /// <summary>The device was revoked: its entries are kept back, and nothing else is taken from it.</summary>
    Revoked,

    /// <summary>It is none of the device's.</summary>
    NotKnown,
}

/// <summary>A code that enrols one phone, once.</summary>
/// <param name="Hash">SHA-256 of the code, lower-case hex.</param>
/// <param name="Operator">The operator.</param>
/// <param name="Dock">The dock that the phone is given to.</param>
/// <param name="Name">Name that the office gave the phone.</param>
/// <param name="Device">Id that the phone will have.</param>
/// <param name="Entry">Entry id of the record that it was enrolled, made ahead so that the record is made once.</param>
/// <param name="MadeBy">The person in the office who made it.</param>
/// <param name="Until">When it ends.</param>
public sealed record EnrolmentCode(string Hash, string Operator, string Dock, string Name, string Device, Guid Entry, string MadeBy, DateTimeOffset Until);

/// <summary>A token as it is handed out.</summary>
/// <param name="Token">The token: the only time it can be seen.</param>
/// <param name="Until">When it ends.</param>
/// <param name="RotateAfter">When the phone should ask for the next one.</param>
public sealed record IssuedToken(string Token, DateTimeOffset Until, DateTimeOffset RotateAfter);
