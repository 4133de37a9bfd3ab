namespace FleetWake.Store.Mail;

/// <summary>States of an outgoing message and the rules between them.</summary>
public static class MailState
{
    /// <summary>Taken by the server or the pickup folder.</summary>
    public const string Sent = "sent";

    /// <summary>Refused for good, or given up.</summary>
    public const string Refused = "refused";

    /// <summary>Nobody knows whether it was taken.</summary>
    public const string Unclear = "unclear";

    /// <summary>Why a message that waited is refused when its reader leaves: nobody has to look at that.</summary>
    internal const string Unsubscribed = "unsubscribed";

    internal const string Deferred = "deferred";
    internal const string Sending = "sending";

    /// <summary>Attempts after which a message that never got through is given up: about two days with the waits below.</summary>
    internal const int MostAttempts = 20;

    /// <summary>Attempts after which a message whose fate stays unclear is left alone.</summary>
    public const int MostUnclearAttempts = 3;

    private static readonly TimeSpan LongestWait = TimeSpan.FromHours(4);

    /// <summary>Longer than any wait, and by more than the clocks of two nodes should differ.</summary>
    internal static readonly TimeSpan BeyondAnyWait = TimeSpan.FromHours(6);

    /// <summary>Wait before the next attempt: doubling from half a minute to four hours.</summary>
    internal static TimeSpan Wait(int attempt)
    {
        var wait = TimeSpan.FromSeconds(30 * Math.Pow(2, Math.Min(attempt - 1, 12)));
        return wait > LongestWait ? LongestWait : wait;
    }
}
