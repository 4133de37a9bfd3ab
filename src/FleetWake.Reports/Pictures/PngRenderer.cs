using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>
/// Draws a picture as a PNG at double size for a mail 600 px wide. Axes, band and series come from the plotting
/// library; all labels are measured and placed by us, since a library's labels may cover each other.
/// Safe to call in parallel: each call has a plot and a surface of its own.
/// </summary>
public sealed class PngRenderer
{
    private readonly PictureFonts fonts;

    /// <summary>Throws, with what to do, when a font is missing.</summary>
    /// <param name="fontFolder">Folder of the fonts; the one beside the program when null.</param>
    public PngRenderer(string? fontFolder = null) =>
        fonts = new PictureFonts(fontFolder ?? Path.Combine(AppContext.BaseDirectory, "Fonts"));

    /// <summary>The picture as PNG on opaque white.</summary>
    public byte[] Render(DriftPicture picture)
    {
        using var text = new SKFont(fonts.Regular, Ink.Text);
        using var strong = new SKFont(fonts.SemiBold, Ink.Text);
        var window = picture.Window;
        float X(double hours) => Ink.Left + (float)((hours - window.FromHours) / (window.ToHours - window.FromHours) * (Ink.Width - Ink.Left - Ink.Right));

        var events = DriftPlot.Events(picture);
        var placed = MarkStrip.Place([.. events.Select(m => (X(m.At), m.Label, m.Effect))], s => strong.MeasureText(s), 12, Ink.Width - 12);
        var rows = placed.Count == 0 ? 0 : placed.Max(p => p.Row) + 1;
        var top = 58 + (rows * Ink.Row);
        var below = Ink.Below + (picture.Outlook is null ? 0 : Ink.Row);
        var height = (int)(Ink.Height - Ink.Below + below);

        using var plot = DriftPlot.Of(picture);
        plot.Layout.Fixed(new PixelPadding(Ink.Left, Ink.Right, below, top));
        var frame = new SKRect(Ink.Left, top, Ink.Width - Ink.Right, height - below);
        return Png(plot, height, canvas => new DriftLabels(canvas, text, strong, picture, frame).Draw(placed, events));
    }

    /// <summary>The sums as PNG on opaque white.</summary>
    public byte[] Render(CusumPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var text = new SKFont(fonts.Regular, Ink.Text);
        using var strong = new SKFont(fonts.SemiBold, Ink.Text);
        var labels = new CusumLabels(picture, text, strong);
        using var plot = CusumPlot.Of(picture);
        plot.Layout.Fixed(new PixelPadding(Ink.Left, Ink.Right, Ink.Below, labels.Top));
        return Png(plot, CusumLabels.Height, labels.Draw);
    }

    /// <summary>The map as PNG on opaque white.</summary>
    public byte[] Render(CauseMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        using var text = new SKFont(fonts.Regular, Ink.Text);
        using var strong = new SKFont(fonts.SemiBold, Ink.Text);
        using var plot = CauseMapPlot.Of(map);
        return Png(plot, CauseMapPlot.Height, canvas => CauseMapPlot.Label(canvas, map, text, strong));
    }

    /// <summary>The picture as PNG on opaque white.</summary>
    public byte[] Render(CorrectionPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var text = new SKFont(fonts.Regular, Ink.Text);
        using var strong = new SKFont(fonts.SemiBold, Ink.Text);
        using var plot = CorrectionPlot.Of(picture);
        return Png(plot, CorrectionPlot.Height(picture), canvas => CorrectionPlot.Label(canvas, picture, text, strong));
    }

    private static byte[] Png(Plot plot, int height, Action<SKCanvas> label)
    {
        using var surface = SKSurface.Create(new SKImageInfo(Ink.Width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        surface.Canvas.Clear(SKColors.White);
        plot.Render(surface.Canvas, Ink.Width, height);
        surface.Canvas.ResetMatrix();
        label(surface.Canvas);
        using var image = surface.Snapshot();
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }
}
