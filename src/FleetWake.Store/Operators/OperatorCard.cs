namespace FleetWake.Store.Operators;

/// <summary>An operator as looked up by its id, which is also its tenant.</summary>
/// <param name="Id">Id, lower case.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Zone">IANA zone of its office.</param>
public sealed record OperatorCard(string Id, string Name, string Zone)
{
    /// <summary>Mail address to which its readers answer; null where none was set. It may be a person's, so no fact names it.</summary>
    public string? ReplyTo { get; init; }
}

/// <summary>A key of the API, without the key: only its hash is kept.</summary>
/// <param name="Id">Public part of the key.</param>
/// <param name="Operator">The operator it belongs to; the tenant comes from here and never from a request.</param>
/// <param name="Name">What it is for.</param>
/// <param name="Hash">SHA-256 of the whole key, lower-case hex. A key carries 256 random bits, so a slow hash would add nothing.</param>
/// <param name="Scopes">What it may do.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="RevokedAt">When it was revoked.</param>
/// <param name="UntilAt">When it ends by itself; null for one that does not.</param>
/// <param name="UsedAt">When it was last used, to the hour.</param>
public sealed record ApiKey(
    string Id, string Operator, string Name, string Hash, IReadOnlyList<KeyScope> Scopes, DateTimeOffset MadeAt, DateTimeOffset? RevokedAt,
    DateTimeOffset? UntilAt = null, DateTimeOffset? UsedAt = null)
{
    /// <summary>Name of the key that lies in the address of somebody's calendar.</summary>
    public static string CalendarOf(string person) => $"calendar of {person}";

    /// <summary>Whether it has ended by itself.</summary>
    public bool IsExpired(DateTimeOffset now) => UntilAt is { } until && until <= now;
}

/// <summary>What a key may do.</summary>
public enum KeyScope
{
    /// <summary>Send records.</summary>
    Record,

    /// <summary>Read boats, findings and due lists.</summary>
    Read,

    /// <summary>Read the calendar of due dates, by a secret address: calendar programs send no headers.</summary>
    Calendar,

    /// <summary>Hand in reports of undeliverable mail.</summary>
    Bounce,
}

/// <summary>The one proof that a digest of a period went out; its id is unique per operator.</summary>
/// <param name="Id">Digest and period.</param>
/// <param name="IssuedAt">When.</param>
/// <param name="Messages">How many messages were queued.</param>
public sealed record IssuedDigest(string Id, DateTimeOffset IssuedAt, int Messages);
