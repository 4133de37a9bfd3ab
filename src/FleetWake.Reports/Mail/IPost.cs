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
    /// <param name="Said">What the server answered; null when nothing.</param>
    public sealed record Sent(string? Said = null) : Delivery;

    /// <summary>Not handed over; worth another attempt later.</summary>
    /// <param name="Why">What was said.</param>
    /// <param name="Waits">What else had better wait.</param>
    public sealed record Deferred(string Why, Waits Waits = Waits.Message) : Delivery;

    /// <summary>The server may or may not have it: sent again only with the same Message-ID, and not for ever.</summary>
    /// <param name="Why">What happened.</param>
    public sealed record Unclear(string Why) : Delivery;

    /// <summary>Refused for good.</summary>
    /// <param name="Why">What was said.</param>
    /// <param name="AboutAddress">Whether it was about the recipient's address, and not about this message or its sender.</param>
    public sealed record Refused(string Why, bool AboutAddress = false) : Delivery;
}

/// <summary>What waits with a message that was not handed over.</summary>
public enum Waits
{
    /// <summary>That message alone.</summary>
    Message,

    /// <summary>Whatever goes to the same host.</summary>
    Host,

    /// <summary>All mail: our own mail server cannot be used.</summary>
    Everything,
}
