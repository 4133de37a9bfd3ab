namespace FleetWake.Store.Servers;

/// <summary>Which PostgreSQL was taken, as a sentence to print. It never holds a password.</summary>
public sealed record ServerSource(Version Version, string Place)
{
    internal static ServerSource Local(ServerBinaries binaries, bool durable) =>
        new(binaries.Version, $"from {(binaries.Package is { } package ? $"the npm package {package} in " : "")}{binaries.Folder}, private cluster, fsync {(durable ? "on" : "off")}");

    internal static ServerSource Named(Version version, string? host, int port) =>
        new(version, $"at {host}:{port}, named by FLEETWAKE_DB");

    internal static ServerSource Container(Version version, string image, Uri engine, bool durable) =>
        new(version, $"from the image {image} in Docker at {engine}, fsync {(durable ? "on" : "off")}");

    public override string ToString() => $"PostgreSQL {Version} {Place}";
}
