using System.Security.Cryptography;

namespace FleetWake.Tests.Kit;

internal static class DatabaseName
{
    /// <summary>Lower case and short enough for PostgreSQL; the drawn part keeps test assemblies on one server apart.</summary>
    public static string For(string hint)
    {
        string plain = string.Concat(hint.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '_'));
        return $"test_{plain[..Math.Min(plain.Length, 40)]}_{RandomNumberGenerator.GetHexString(8, lowercase: true)}";
    }
}
