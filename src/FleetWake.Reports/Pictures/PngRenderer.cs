using FleetWake.Reports.Pictures.Figures;
using FleetWake.Reports.Pictures.Fleet;

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

    /// <summary>The picture as PNG on opaque white, 1200 px wide.</summary>
    /// <param name="picture">Any kind of picture.</param>
    /// <exception cref="ArgumentException">A kind that nobody taught it to draw.</exception>
    public byte[] Render(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var pens = new Pens(fonts);
        using var sheet = Of(picture, pens);
        return sheet.Png();
    }

    private static Sheet Of(Picture picture, Pens pens) => picture switch
    {
        DriftPicture p => DriftPlot.Sheet(p, pens),
        CusumPicture p => CusumPlot.Sheet(p, pens),
        CauseMap p => CauseMapPlot.Sheet(p, pens),
        CorrectionPicture p => CorrectionPlot.Sheet(p, pens),
        FleetStrip p => FleetStripPlot.Sheet(p, pens),
        SlipMap p => SlipMapPlot.Sheet(p, pens),
        DriftPanels p => DriftPanelsPlot.Sheet(p, pens),
        LifeCurves p => LifeCurvesPlot.Sheet(p, pens),
        LimitRows p => LimitRowsPlot.Sheet(p, pens),
        _ => throw new ArgumentException($"A {picture.GetType().Name} cannot be drawn.", nameof(picture)),
    };
}
