using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace FleetWake.Store.Mail;

/// <summary>States of an outgoing message and the rules between them.</summary>
public static class MailState
{
    /// <summary>Waits for its first attempt.</summary>
    public const string Queued = "queued";

    /// <summary>An attempt is under way.</summary>
    public const string Sending = "sending";

    /// <summary>Not handed over yet; tried again.</summary>
    public const string Deferred = "deferred";

    /// <summary>Nobody knows whether it was taken; tried again with the same Message-ID, a bounded number of times.</summary>
    public const string Unclear = "unclear";

    /// <summary>Taken by the server or the pickup folder.</summary>
    public const string Sent = "sent";

    /// <summary>Refused for good.</summary>
    public const string Refused = "refused";

    /// <summary>Not tried any more, though nobody refused it for good.</summary>
    public const string GivenUp = "given_up";

    /// <summary>Taken, and reported as not deliverable afterwards.</summary>
    public const string Bounced = "bounced";

    /// <summary>Not sent, for its reader left.</summary>
    public const string Unsubscribed = "unsubscribed";

    /// <summary>Every state, in the order in which a message can come to it.</summary>
    public static IReadOnlyList<string> All { get; } = [Queued, Sending, Deferred, Unclear, Sent, Refused, GivenUp, Bounced, Unsubscribed];

    /// <summary>Attempts after which a message whose fate stays unclear is left alone.</summary>
    public const int MostUnclearAttempts = 3;

    /// <summary>How long a message is tried for: as long as mail servers usually do at the least (RFC 5321, 4.5.4.1, asks for 4 to 5 days of a relay; a digest of the week before last serves nobody).</summary>
    public static readonly TimeSpan TriedFor = TimeSpan.FromHours(48);

    /// <summary>Longer than any wait, and by more than the clocks of two nodes should differ.</summary>
    internal static readonly TimeSpan BeyondAnyWait = TimeSpan.FromHours(6);

    private static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan LongestWait = TimeSpan.FromHours(4);

    /// <summary>
    /// Wait before the next attempt: doubling from half a minute to four hours, a fifth more or less, so that a thousand messages
    /// that failed together do not come back together. The part that looks like chance follows from message and attempt: a test, and whoever reads a log, can reckon it.
    /// </summary>
    public static TimeSpan Wait(string message, int attempt)
    {
        var wait = FirstWait * Math.Pow(2, Math.Clamp(attempt - 1, 0, 12));
        var drawn = BinaryPrimitives.ReadUInt32BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes($"{message}/{attempt}"))) / (double)uint.MaxValue;
        return (wait < LongestWait ? wait : LongestWait) * (0.8 + (0.4 * drawn));
    }

    /// <summary>When a message that failed is tried next; null when its time is over. The last attempt falls on the end of its time.</summary>
    public static DateTimeOffset? Next(string message, int attempt, DateTimeOffset now, DateTimeOffset until)
    {
        if (now >= until) return null;
        var next = now + Wait(message, attempt);
        return next < until ? next : until;
    }
}
