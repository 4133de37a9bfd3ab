namespace FleetWake.Store.Mail;

/// <summary>
/// Which enhanced status says that an address takes no mail (RFC 3463, 3.2 and 3.3; 5.1.10 RFC 7505, 4.2): no such mailbox, no such domain, no
/// address at all, moved away, or closed. The others of these groups are about the sender (5.1.7, 5.1.8), the message (5.2.3, too long for it), a
/// mailbox that will have room again (5.2.2) or a list: one wrong setting of ours must not end everybody's mail.
/// </summary>
public static class AddressStatus
{
    private static readonly HashSet<string> Gone = new(StringComparer.Ordinal) { "5.1.1", "5.1.2", "5.1.3", "5.1.6", "5.1.10", "5.2.1" };

    /// <summary>Whether a status says so.</summary>
    /// <param name="status">The status, e.g. <c>5.1.1</c>; null when none was told.</param>
    public static bool SaysGone(string? status) => status is not null && Gone.Contains(status);
}
