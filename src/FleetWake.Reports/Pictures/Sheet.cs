using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>A picture ready to be drawn: axes, areas and series as a plot, and over them the words, which are measured and placed by us.</summary>
/// <param name="Plot">What the plotting library draws; null for a picture that has no axes of its kind.</param>
/// <param name="Height">Height of the image [px].</param>
/// <param name="Words">Writes the words.</param>
internal sealed record Sheet(Plot? Plot, int Height, Action<SKCanvas> Words) : IDisposable
{
    // Charts are flat: filters made for photographs, tried row by row, cost most of the time and make them no smaller.
    private static readonly SKPngEncoderOptions s_packing = new(SKPngEncoderFilterFlags.None, 6);

    public void Dispose() => Plot?.Dispose();

    /// <summary>The image on opaque white.</summary>
    public byte[] Png()
    {
        using var surface = SKSurface.Create(new SKImageInfo(Ink.Width, Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        surface.Canvas.Clear(SKColors.White);
        Plot?.Render(surface.Canvas, Ink.Width, Height);
        surface.Canvas.ResetMatrix();
        Words(surface.Canvas);
        using var pixels = surface.PeekPixels();
        using var png = pixels.Encode(s_packing) ?? throw new InvalidOperationException("The image could not be packed.");
        return png.ToArray();
    }
}
