using SkiaSharp;

namespace FleetWake.Reports.Tests.Pictures;

/// <summary>What sets two images apart.</summary>
/// <param name="Pixels">How many pixels differ.</param>
/// <param name="Most">The largest difference of a colour's part, of 255.</param>
/// <param name="Png">The approved image paled, with what differs in red.</param>
internal sealed record PictureDifference(int Pixels, int Most, byte[] Png)
{
    /// <summary>The difference of two images; null where every pixel is the same.</summary>
    public static PictureDifference? Of(byte[] approved, byte[] received)
    {
        using var a = Decoded(approved);
        using var b = Decoded(received);
        if (a.Width == b.Width && a.Height == b.Height && a.GetPixelSpan().SequenceEqual(b.GetPixelSpan())) return null;
        var (width, height) = (Math.Max(a.Width, b.Width), Math.Max(a.Height, b.Height));
        using var marked = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        var (pixels, most) = (0, 0);
        for (var y = 0; y < height; y++)
            for (var x = 0; x < width; x++)
            {
                var (p, q) = (At(a, x, y), At(b, x, y));
                var by = p is { } c && q is { } d ? Math.Max(Math.Abs(c.Red - d.Red), Math.Max(Math.Abs(c.Green - d.Green), Math.Abs(c.Blue - d.Blue))) : 255;
                if (by > 0) (pixels, most) = (pixels + 1, Math.Max(most, by));
                marked.SetPixel(x, y, by > 0 ? SKColors.Red : Paled(p ?? SKColors.White));
            }

        using var image = SKImage.FromBitmap(marked);
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        return new PictureDifference(pixels, most, png.ToArray());
    }

    /// <summary>A page that shows approved, received and difference side by side, for whatever lies in the folder.</summary>
    public static void WritePage(string received, string approved)
    {
        var names = Directory.GetFiles(received, "*.difference.png").Select(f => Path.GetFileName(f)[..^".difference.png".Length]).Order(StringComparer.Ordinal);
        var rows = names.Select(n => $"<h2>{n}</h2><p><img src=\"{Path.GetRelativePath(received, approved)}/{n}.png\"> <img src=\"{n}.received.png\"> <img src=\"{n}.difference.png\"></p>");
        File.WriteAllText(Path.Combine(received, "index.html"), $"<!doctype html><meta charset=utf-8><title>Pictures that differ</title><style>img{{width:32%;border:1px solid #999}}</style><h1>approved, received, difference</h1>{string.Concat(rows)}");
    }

    /// <summary>The image with its middle pixel a little lighter or darker.</summary>
    public static byte[] WithOnePixelChanged(byte[] png, int by)
    {
        using var bitmap = Decoded(png);
        var (x, y) = (bitmap.Width / 2, bitmap.Height / 2);
        var c = bitmap.GetPixel(x, y);
        bitmap.SetPixel(x, y, c.WithRed((byte)(c.Red >= by ? c.Red - by : c.Red + by)));
        using var image = SKImage.FromBitmap(bitmap);
        using var encoded = image.Encode(SKEncodedImageFormat.Png, 100);
        return encoded.ToArray();
    }

    public static SKBitmap Decoded(byte[] png)
    {
        var bitmap = new SKBitmap();
        using var codec = SKCodec.Create(new MemoryStream(png));
        var info = new SKImageInfo(codec.Info.Width, codec.Info.Height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        bitmap.TryAllocPixels(info);
        Assert.Equal(SKCodecResult.Success, codec.GetPixels(info, bitmap.GetPixels()));
        return bitmap;
    }

    private static SKColor? At(SKBitmap bitmap, int x, int y) => x < bitmap.Width && y < bitmap.Height ? bitmap.GetPixel(x, y) : null;

    private static SKColor Paled(SKColor c) => new((byte)(191 + (c.Red / 4)), (byte)(191 + (c.Green / 4)), (byte)(191 + (c.Blue / 4)));
}
