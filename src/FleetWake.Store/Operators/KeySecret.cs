using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace FleetWake.Store.Operators;

/// <summary>The written form of an API key: <c>fw_</c>, a public id, an underscore and 32 random bytes.</summary>
public static class KeySecret
{
    private const string Prefix = "fw_";
    private const int IdLength = 12;

    /// <summary>A new key: its public id and the whole key, which is shown once and never stored.</summary>
    public static (string Id, string Key) Make()
    {
        var id = RandomNumberGenerator.GetString("abcdefghijkmnpqrstuvwxyz23456789", IdLength);
        return (id, $"{Prefix}{id}_{Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32))}");
    }

    /// <summary>A new secret for a link.</summary>
    public static string MakeToken() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(24));

    /// <summary>The public id within a key; null when the text is no key.</summary>
    public static string? IdOf(string key) =>
        key.StartsWith(Prefix, StringComparison.Ordinal) && key.Length > Prefix.Length + IdLength && key[Prefix.Length + IdLength] == '_'
            ? key.Substring(Prefix.Length, IdLength)
            : null;

    /// <summary>What is stored of a key.</summary>
    public static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    /// <summary>Whether a key is the one whose hash is stored, in constant time.</summary>
    public static bool Matches(string key, string hash) =>
        CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(Hash(key)), Encoding.ASCII.GetBytes(hash));
}
