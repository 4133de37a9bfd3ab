using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>The bundled fonts. Without them a chart loses all its text without an error, so they are asked for at start.</summary>
internal sealed class PictureFonts
{
    /// <summary>Our own name for the family: an installed one of another version must not take its place.</summary>
    public const string Family = "FleetWake chart";

    private static readonly Lock Gate = new();
    private static bool registered;

    public PictureFonts(string folder)
    {
        var regular = Path.Combine(folder, "Inter_400Regular.ttf");
        var semiBold = Path.Combine(folder, "Inter_600SemiBold.ttf");
        Regular = Load(regular);
        SemiBold = Load(semiBold);

        // The plotting library keeps one list of fonts for the process.
        lock (Gate)
        {
            if (registered) return;
            Fonts.AddFontFile(Family, regular);
            Fonts.AddFontFile(Family, semiBold, bold: true);
            registered = true;
        }
    }

    public SKTypeface Regular { get; }

    public SKTypeface SemiBold { get; }

    private static SKTypeface Load(string file) =>
        (File.Exists(file) ? SKTypeface.FromFile(file) : null)
        ?? throw new InvalidOperationException(
            $"The chart font {Path.GetFileName(file)} is not in {Path.GetDirectoryName(file)}: charts would have no text. Put the folder Fonts beside the program again.");
}
