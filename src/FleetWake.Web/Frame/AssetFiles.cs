using System.Collections.Frozen;
using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Frame;

/// <summary>
/// Style sheets, scripts and icons, which travel inside the assembly. All stand under one address that names a hash of them
/// all, so that a browser may keep them for ever and modules may import each other by relative paths. With
/// <c>FLEETWAKE_ASSETS</c> they are read from that folder at each request instead: for whoever writes them.
/// </summary>
public static class AssetFiles
{
    private static readonly string? Folder = Environment.GetEnvironmentVariable("FLEETWAKE_ASSETS") is { Length: > 0 } folder ? folder : null;
    private static readonly FrozenDictionary<string, Asset> All = Load();

    /// <summary>Hash of all assets: they change together.</summary>
    public static string Version { get; } = Folder is null ? HashOf(All) : "dev";

    /// <summary>Names of all assets, in order.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The address of an asset, e.g. of <c>css/frame.css</c>; throws when there is none, so that a wrong name fails its page's first test.</summary>
    public static string Url(string name) =>
        All.ContainsKey(name) || Folder is not null ? $"/a/{Version}/{name}" : throw new ArgumentException($"There is no asset \"{name}\".", nameof(name));

    /// <summary>The bytes of an asset.</summary>
    public static byte[] Bytes(string name) => Folder is null ? All[name].Plain : File.ReadAllBytes(Path.Combine(Folder, name));

    /// <summary>Maps their address.</summary>
    public static void MapAssets(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/a/{version}/{**name}", Answer).ExcludeFromDescription();

    private static IResult Answer(string version, string name, HttpContext http)
    {
        if (Folder is not null && All.ContainsKey(name))
            return Results.Bytes(Bytes(name), TypeOf(name));
        if (version != Version || !All.TryGetValue(name, out var asset)) return Results.NotFound();
        http.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        http.Response.Headers.Vary = "Accept-Encoding";
        if (asset.Brotli.Value is not { } packed || !http.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.Ordinal))
            return Results.Bytes(asset.Plain, TypeOf(name));
        http.Response.Headers.ContentEncoding = "br";
        return Results.Bytes(packed, TypeOf(name));
    }

    private static FrozenDictionary<string, Asset> Load()
    {
        var assembly = typeof(AssetFiles).Assembly;
        return assembly.GetManifestResourceNames().Where(n => n.StartsWith("assets/", StringComparison.Ordinal))
            .ToFrozenDictionary(n => n["assets/".Length..].Replace('\\', '/'), n => Read(assembly.GetManifestResourceStream(n)!), StringComparer.Ordinal);
    }

    private static Asset Read(Stream stream)
    {
        using (stream)
        {
            var plain = new MemoryStream();
            stream.CopyTo(plain);
            var bytes = plain.ToArray();

            // Packed when first asked for: the hardest packing of all of them would hold up each start.
            return new Asset(bytes, new Lazy<byte[]?>(() => Pack(bytes)));
        }
    }

    /// <summary>Packs; null where that gains little, as with a picture, which is packed already.</summary>
    private static byte[]? Pack(byte[] plain)
    {
        var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.SmallestSize, leaveOpen: true)) brotli.Write(plain);
        return packed.Length < plain.Length * 0.9 ? packed.ToArray() : null;
    }

    private static string HashOf(FrozenDictionary<string, Asset> all)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (name, asset) in all.OrderBy(a => a.Key, StringComparer.Ordinal))
        {
            hash.AppendData(System.Text.Encoding.UTF8.GetBytes(name));
            hash.AppendData(asset.Plain);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..12];
    }

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".json" => "application/json",
        ".svg" => "image/svg+xml",
        ".png" => "image/png",
        ".woff2" => "font/woff2",
        var other => throw new InvalidOperationException($"The type of {other} is not told."),
    };

    private sealed record Asset(byte[] Plain, Lazy<byte[]?> Brotli);
}
