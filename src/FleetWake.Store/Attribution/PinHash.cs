using System.Globalization;
using System.Security.Cryptography;

namespace FleetWake.Store.Attribution;

/// <summary>
/// What is stored of a PIN: PBKDF2 with a salt of its own. Six digits are a million guesses, which no hash makes many for
/// whoever has the database; what protects a PIN is that few guesses are heard (<see cref="DockPins"/>).
/// </summary>
internal static class PinHash
{
    private const int Rounds = 100_000;
    private const int Bytes = 16;

    public static string Of(string pin)
    {
        var salt = RandomNumberGenerator.GetBytes(Bytes);
        return string.Create(CultureInfo.InvariantCulture, $"{Rounds}.{Convert.ToHexStringLower(salt)}.{Convert.ToHexStringLower(Derive(pin, salt, Rounds))}");
    }

    public static bool Matches(string pin, string? stored)
    {
        if (stored?.Split('.') is not [var rounds, var salt, var hash]) return false;
        return CryptographicOperations.FixedTimeEquals(Derive(pin, Convert.FromHexString(salt), int.Parse(rounds, CultureInfo.InvariantCulture)), Convert.FromHexString(hash));
    }

    private static byte[] Derive(string pin, byte[] salt, int rounds) => Rfc2898DeriveBytes.Pbkdf2(pin, salt, rounds, HashAlgorithmName.SHA256, 2 * Bytes);
}
