using System.Security.Cryptography;
using System.Text;

namespace FleetWake.Demo;

/// <summary>Entry ids that follow from what the entry is about: a UUID of version 8 (RFC 9562) by SHA-256 of operator and key.</summary>
internal static class EntryId
{
    /// <summary>The id of a key.</summary>
    public static Guid Of(string key)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(InventedFleet.OperatorName + "\n" + key)).AsSpan(0, 16);
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
