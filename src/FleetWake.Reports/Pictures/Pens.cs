using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>The two weights in which all words of a picture are written. One pair a drawing: a font is not for two threads.</summary>
internal sealed class Pens(PictureFonts fonts) : IDisposable
{
    /// <summary>For whatever explains.</summary>
    public SKFont Text { get; } = new(fonts.Regular, Ink.Text);

    /// <summary>For whatever is the matter.</summary>
    public SKFont Strong { get; } = new(fonts.SemiBold, Ink.Text);

    public void Dispose()
    {
        Text.Dispose();
        Strong.Dispose();
    }
}
