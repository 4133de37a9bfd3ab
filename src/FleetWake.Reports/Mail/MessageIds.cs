using System.Security.Cryptography;
using System.Text;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Message-IDs that follow from what a message is: a digest sent again after an unclear attempt carries the same one, so
/// that the receiving side can tell it is no second message. A hash, so that nobody's id or address stands in it.
/// </summary>
public static class MessageIds
{
    /// <summary>The Message-ID, without its angle brackets.</summary>
    public static string Of(string operatorId, string digest, string period, string recipient, string domain)
    {
        // Each part with its length: ("ab", "c") and ("a", "bc") are two messages.
        var parts = string.Concat(new[] { operatorId, digest, period, recipient }.Select(p => $"{Encoding.UTF8.GetByteCount(p)}:{p}"));
        return $"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(parts)))[..40]}@{domain}";
    }
}
