using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace FleetWake.Store.Operators;

/// <summary>The written form of an API key: <c>fw_</c>, a public id, an underscore and 32 random bytes.</summary>
public static class KeySecret
{
    private const string Prefix = "fw_";
    private const string Letters = "abcdefghijkmnpqrstuvwxyz23456789";
    private const int IdLength = 12;

    /// <summary>A new key: its public id and the whole key, which is shown once and never stored.</summary>
    public static (string Id, string Key) Make()
    {
        var id = NewId();
        return (id, Whole(Prefix, id));
    }

    /// <summary>A new secret for a link.</summary>
    public static string MakeToken() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(24));

    /// <summary>The public id within a key; null when the text is no key.</summary>
    public static string? IdOf(string key) => IdOf(Prefix, key);

    /// <summary>A new public id.</summary>
    internal static string NewId() => Typed(IdLength);

    /// <summary>So many random letters that a hand can type and an eye does not mistake.</summary>
    internal static string Typed(int length) => RandomNumberGenerator.GetString(Letters, length);

    /// <summary>A new secret of this form that begins otherwise.</summary>
    internal static string Whole(string prefix, string id) => $"{prefix}{id}_{Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32))}";

    /// <summary>The public id within a secret of this form that begins otherwise; null when the text is none.</summary>
    internal static string? IdOf(string prefix, string text) =>
        text.StartsWith(prefix, StringComparison.Ordinal) && text.Length > prefix.Length + IdLength && text[prefix.Length + IdLength] == '_'
            ? text.Substring(prefix.Length, IdLength)
            : null;

    /// <summary>What is stored of a key.</summary>
    public static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    /// <summary>Whether a key is the one whose hash is stored, in constant time.</summary>
    public static bool Matches(string key, string hash) =>
        CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(Hash(key)), Encoding.ASCII.GetBytes(hash));
}
