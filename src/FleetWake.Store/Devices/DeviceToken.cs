using System.Buffers.Text;
using System.Security.Cryptography;

namespace FleetWake.Store.Devices;

/// <summary>The written form of a device's token, <c>fwd_</c>, the device's id, an underscore and 32 random bytes; and of the codes that enrol one.</summary>
public static class DeviceToken
{
    private const string Prefix = "fwd_";
    private const string Letters = "abcdefghijkmnpqrstuvwxyz23456789";
    private const int IdLength = 12;
    private const int CodeLength = 20;

    /// <summary>A new id of a device, which its records name.</summary>
    public static string NewId() => RandomNumberGenerator.GetString(Letters, IdLength);

    /// <summary>A new enrolment code: a hundred random bits in letters that a hand can type.</summary>
    public static string NewCode() => RandomNumberGenerator.GetString(Letters, CodeLength);

    /// <summary>A new token of a device; it is told once and never stored.</summary>
    public static string New(string device) => $"{Prefix}{device}_{Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32))}";

    /// <summary>The device within a token; null when the text is no token.</summary>
    public static string? IdOf(string token) =>
        token.StartsWith(Prefix, StringComparison.Ordinal) && token.Length > Prefix.Length + IdLength && token[Prefix.Length + IdLength] == '_'
            ? token.Substring(Prefix.Length, IdLength)
            : null;
}
