using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace FleetWake.Web.Dock;

/// <summary>The public half of a phone's key, as a JWK (RFC 7517) of the curve P-256.</summary>
/// <param name="Kty">Always EC.</param>
/// <param name="Crv">Always P-256.</param>
/// <param name="X">X of the point, base64url.</param>
/// <param name="Y">Y of the point, base64url.</param>
internal sealed record DeviceKey(string? Kty, string? Crv, string? X, string? Y)
{
    private const int CoordinateBytes = 32;

    /// <summary>The key as it is stored.</summary>
    public string Stored() => JsonSerializer.Serialize(new Dictionary<string, string?>(StringComparer.Ordinal) { ["kty"] = Kty, ["crv"] = Crv, ["x"] = X, ["y"] = Y });

    /// <summary>Whether it is a point of the curve.</summary>
    public bool IsGood()
    {
        try
        {
            using var key = Open();
            return key is not null;
        }
        catch (CryptographicException)
        {
            return false;
        }
    }

    /// <summary>Whether a signature (r and s, base64url) over a text is this key's.</summary>
    public static bool Signed(string stored, string text, string signature)
    {
        var key = JsonSerializer.Deserialize<Dictionary<string, string>>(stored)!;
        using var open = new DeviceKey(key["kty"], key["crv"], key["x"], key["y"]).Open()!;
        return Bytes(signature) is { } bytes && open.VerifyData(Encoding.UTF8.GetBytes(text), bytes, HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation);
    }

    private ECDsa? Open() =>
        Kty == "EC" && Crv == "P-256" && Bytes(X) is { Length: CoordinateBytes } x && Bytes(Y) is { Length: CoordinateBytes } y
            ? ECDsa.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new ECPoint { X = x, Y = y } })
            : null;

    private static byte[]? Bytes(string? text)
    {
        if (text is null || text.Length > 128) return null;
        try
        {
            return Base64Url.DecodeFromChars(text);
        }
        catch (FormatException)
        {
            return null;
        }
    }
}
