namespace FleetWake.Store.Operators;

/// <summary>Somebody who receives a digest: an erasable row, for an address is personal; facts name its id only.</summary>
/// <param name="Id">Pseudonymous id.</param>
/// <param name="Address">Mail address.</param>
/// <param name="Digest">Which digest.</param>
/// <param name="Token">Secret of the unsubscribe link.</param>
/// <param name="Subscribed">False once unsubscribed, and before it was confirmed where that was asked for.</param>
public sealed record Recipient(string Id, string Address, string Digest, string Token, bool Subscribed)
{
    /// <summary>Of which dock the digest is; null for every dock.</summary>
    public string? Dock { get; init; }

    /// <summary>Since when a server said that the address takes no mail; null while nothing says so. Nothing is sent to it until a person lets it be tried again.</summary>
    public DateTimeOffset? NoMailSince { get; init; }

    /// <summary>What the server said, without the address.</summary>
    public string? NoMailWhy { get; init; }

    /// <summary>When it was last asked to confirm, also when it left since; null when that was never asked, or was confirmed.</summary>
    public DateTimeOffset? AskedAt { get; init; }

    /// <summary>SHA-256 of the secret of the link that confirms it, lower-case hex; null when none is out.</summary>
    public string? ConfirmHash { get; init; }

    /// <summary>When it left by the link of a message, and so by itself; null when it did not, or somebody else ended it since.</summary>
    public DateTimeOffset? LeftAt { get; init; }

    /// <summary>Whether digests are sent to it now.</summary>
    public bool TakesMail() => Subscribed && NoMailSince is null;
}

/// <summary>Finds a recipient by the secret of the unsubscribe link.</summary>
/// <param name="Id">The secret.</param>
/// <param name="Operator">The operator.</param>
/// <param name="Recipient">The recipient.</param>
public sealed record UnsubscribeToken(string Id, string Operator, string Recipient);
