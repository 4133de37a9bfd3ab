using System.Security.Cryptography;

namespace FleetWake.Store.Servers;

internal static class Secret
{
    /// <summary>Letters and digits only, so that no shell, path or connection string has to quote it.</summary>
    public static string Text(int length) =>
        RandomNumberGenerator.GetString("abcdefghijklmnopqrstuvwxyz0123456789", length);
}
