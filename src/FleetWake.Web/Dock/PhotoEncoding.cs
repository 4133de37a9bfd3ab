using FleetWake.Store.Photos;
using SkiaSharp;

namespace FleetWake.Web.Dock;

/// <summary>
/// Draws a photo anew: what comes out is ours, without the place, the phone's name or anything else that the file carried.
/// The file may be hostile, so that its head is asked for its kind and size before anything is decoded, and few are
/// decoded at once.
/// </summary>
internal sealed class PhotoEncoding : IDisposable
{
    /// <summary>Longest side of a photo as kept [pixel]: a chip of a blade is seen, a face across the dock is not.</summary>
    public const int LongestSide = 1600;

    private const int Quality = 80;
    private const int AtOnce = 2;

    private readonly SemaphoreSlim turns = new(AtOnce);

    /// <summary>The photo as a JPEG; or what is wrong with it.</summary>
    /// <param name="bytes">The file as sent.</param>
    /// <param name="type">What it says that it is.</param>
    /// <param name="ct">Ends the wait for a turn.</param>
    public async Task<(Jpeg? Photo, string? Problem)> EncodeAsync(byte[] bytes, string type, CancellationToken ct)
    {
        if (KindOf(bytes) != type) return (null, $"The file is no {type} by its first bytes: take the photo again, or send it as what it is.");
        await turns.WaitAsync(ct);
        try
        {
            return await Task.Run(() => Encode(bytes, type), ct);
        }
        finally
        {
            turns.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => turns.Dispose();

    private static (Jpeg? Photo, string? Problem) Encode(byte[] bytes, string type)
    {
        const string Broken = "The file is cut off or broken: take the photo again.";
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null) return (null, Broken);
        if (!type.EndsWith(codec.EncodedFormat.ToString(), StringComparison.OrdinalIgnoreCase)) return (null, Broken);
        var (width, height) = (codec.Info.Width, codec.Info.Height);
        if (width < 1 || height < 1) return (null, Broken);
        if ((long)width * height > PhotoRules.MostPixels) return (null, $"The photo has {width} x {height} pixels; at most {PhotoRules.MostPixels / 1_000_000} million are taken: make it smaller first.");

        using var decoded = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        if (codec.GetPixels(decoded.Info, decoded.GetPixels()) != SKCodecResult.Success) return (null, Broken);
        var scale = Math.Min(1, (double)LongestSide / Math.Max(width, height));
        var turned = codec.EncodedOrigin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (across, down) = ((int)Math.Max(1, Math.Round(width * scale)), (int)Math.Max(1, Math.Round(height * scale)));
        var size = turned ? new SKImageInfo(down, across) : new SKImageInfo(across, down);
        using var drawn = new SKBitmap(size);
        using (var canvas = new SKCanvas(drawn))
        {
            // A file may be clear where nothing was drawn; paper is white.
            canvas.Clear(SKColors.White);
            canvas.SetMatrix(Upright(codec.EncodedOrigin, across, down));
            using var image = SKImage.FromBitmap(decoded);
            canvas.DrawImage(image, new SKRect(0, 0, across, down), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        }

        using var encoded = drawn.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return encoded is null ? (null, Broken) : (new Jpeg(encoded.ToArray(), size.Width, size.Height), null);
    }

    /// <summary>Turns a picture of some width and height upright: how the camera was held stands in the metadata, which is not kept.</summary>
    private static SKMatrix Upright(SKEncodedOrigin origin, float w, float h) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static string? KindOf(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? "image/jpeg"
        : bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]) ? "image/png"
        : bytes.Length > 12 && bytes.StartsWith("RIFF"u8) && bytes[8..].StartsWith("WEBP"u8) ? "image/webp"
        : null;
}
