using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>Hands one message to one recipient's way of delivery. The seam where tests and demos stand in for a mail server.</summary>
public interface IPost
{
    /// <summary>Tries once. Throws only when cancelled before the message was begun.</summary>
    Task<Delivery> SendAsync(MimeMessage message, CancellationToken cancellationToken);
}

/// <summary>What became of one attempt.</summary>
public abstract record Delivery
{
    private Delivery()
    {
    }

    /// <summary>Taken over.</summary>
    public sealed record Sent : Delivery;

    /// <summary>Not handed over; worth another attempt later.</summary>
    /// <param name="Why">What was said.</param>
    public sealed record Deferred(string Why) : Delivery;

    /// <summary>The server may or may not have it: sent again only with the same Message-ID, and not for ever.</summary>
    /// <param name="Why">What happened.</param>
    public sealed record Unclear(string Why) : Delivery;

    /// <summary>Refused for good.</summary>
    /// <param name="Why">What was said.</param>
    public sealed record Refused(string Why) : Delivery;
}
