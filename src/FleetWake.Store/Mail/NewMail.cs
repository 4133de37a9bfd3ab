namespace FleetWake.Store.Mail;

/// <summary>A message ready to be queued.</summary>
/// <param name="Message">Key of the message within the operator.</param>
/// <param name="Recipient">Pseudonymous id of its one recipient.</param>
/// <param name="MessageId">Its Message-ID, the same at every attempt.</param>
/// <param name="Mime">The whole message, as it goes over the wire but for its signature.</param>
public sealed record NewMail(string Message, string Recipient, string MessageId, byte[] Mime)
{
    /// <summary>Of which dock it is; null for every dock.</summary>
    public string? Dock { get; init; }

    /// <summary>Its subject, for lists of what went out.</summary>
    public string? Subject { get; init; }

    /// <summary>The domain that it goes to, lower case; what that host asks for is asked of it alone.</summary>
    public string? Host { get; init; }

    /// <summary>The message that it repeats because a person asked for it.</summary>
    public string? AgainOf { get; init; }
}

/// <summary>A message that is not settled.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Message">Key of the message.</param>
/// <param name="Attempts">How many attempts the database knows of.</param>
/// <param name="State">Its state.</param>
public sealed record WaitingMail(string Operator, string Message, int Attempts, string State);

/// <summary>A message claimed for one attempt.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Message">Key of the message.</param>
/// <param name="Attempt">Number of this attempt, from 1.</param>
/// <param name="Unclear">How many attempts before it ended without a clear answer.</param>
/// <param name="Mime">The whole message.</param>
public sealed record ClaimedMail(string Operator, string Message, int Attempt, int Unclear, byte[] Mime)
{
    /// <summary>Pseudonymous id of its recipient.</summary>
    public string Recipient { get; init; } = "";

    /// <summary>What it is, e.g. <c>weekly-wear</c>; empty for one of an earlier version.</summary>
    public string Digest { get; init; } = "";

    /// <summary>The domain that it goes to; empty when that is not known.</summary>
    public string Host { get; init; } = "";

    /// <summary>The attempt before this one was never reported: its sender died, or could not reach the database any more.</summary>
    public bool AfterSilence { get; init; }

    /// <summary>Until when it is tried.</summary>
    public DateTimeOffset Until { get; init; } = DateTimeOffset.MaxValue;
}
