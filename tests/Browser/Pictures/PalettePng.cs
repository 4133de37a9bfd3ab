using System.Buffers.Binary;
using System.IO.Compression;
using SkiaSharp;

namespace FleetWake.Browser.Tests.Pictures;

/// <summary>
/// A picture of a page with at most 64 colours, as a PNG with a palette: a page has few inks, and what smooths its letters
/// lies between them. A third of the bytes, and the eye sees no difference.
/// </summary>
internal static class PalettePng
{
    private const int Most = 64;

    public static byte[] Of(byte[] png)
    {
        using var bitmap = SKBitmap.Decode(png);
        var pixels = bitmap.Pixels;
        var inks = Inks(pixels);
        var nearest = new Dictionary<uint, byte>();
        var rows = new byte[bitmap.Height * (bitmap.Width + 1)];
        for (var y = 0; y < bitmap.Height; y++)
        {
            for (var x = 0; x < bitmap.Width; x++)
            {
                var color = (uint)pixels[(y * bitmap.Width) + x] & 0xFFFFFF;
                if (!nearest.TryGetValue(color, out var at)) nearest[color] = at = Nearest(color, inks);
                rows[(y * (bitmap.Width + 1)) + 1 + x] = at;
            }
        }

        return Write(bitmap.Width, bitmap.Height, inks, rows);
    }

    /// <summary>
    /// The commonest colours, and then whichever is seen most and least like those chosen: a word in a rare ink keeps it. The
    /// commonest colour of each rounded one stands for it, so that flat paper stays the paper it was.
    /// </summary>
    private static uint[] Inks(SKColor[] pixels)
    {
        var groups = pixels.CountBy(p => (uint)p & 0xFFFFFF).GroupBy(c => c.Key & 0xF0F0F0).Select(g => (Color: g.MaxBy(c => c.Value).Key, Count: g.Sum(c => c.Value))).ToArray();
        var off = Array.ConvertAll(groups, _ => double.MaxValue);
        var chosen = new List<uint>();
        while (chosen.Count < Math.Min(Most, groups.Length))
        {
            var at = Enumerable.Range(0, groups.Length).MaxBy(i => Math.Sqrt(groups[i].Count) * Math.Min(off[i], 1e6));
            chosen.Add(groups[at].Color);
            for (var i = 0; i < groups.Length; i++) off[i] = Math.Min(off[i], Apart(groups[i].Color, groups[at].Color));
        }

        return [.. chosen];
    }

    private static double Apart(uint a, uint b)
    {
        var (r, g, u) = ((int)(a >> 16) - (int)(b >> 16), (int)((a >> 8) & 255) - (int)((b >> 8) & 255), (int)(a & 255) - (int)(b & 255));
        return (r * r) + (g * g) + (u * u);
    }

    private static byte Nearest(uint color, uint[] palette)
    {
        var (best, at) = (double.MaxValue, 0);
        for (var i = 0; i < palette.Length; i++)
        {
            if (Apart(color, palette[i]) is var off && off < best) (best, at) = (off, i);
        }

        return (byte)at;
    }

    private static byte[] Write(int width, int height, uint[] palette, byte[] rows)
    {
        using var file = new MemoryStream();
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        (head[8], head[9]) = (8, 3);
        Part(file, "IHDR"u8, head);
        Part(file, "PLTE"u8, [.. palette.SelectMany(p => new[] { (byte)(p >> 16), (byte)(p >> 8), (byte)p })]);
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true)) zlib.Write(rows);
        Part(file, "IDAT"u8, packed.ToArray());
        Part(file, "IEND"u8, []);
        return file.ToArray();
    }

    private static void Part(MemoryStream file, ReadOnlySpan<byte> name, byte[] body)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, body.Length);
        file.Write(number);
        byte[] named = [.. name, .. body];
        file.Write(named);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc(named));
        file.Write(number);
    }

    private static uint Crc(byte[] bytes)
    {
        var crc = uint.MaxValue;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320;
        }

        return ~crc;
    }
}
