using FleetWake.Logbook.Findings;
using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>
/// Colours and sizes of the pictures, in pixels of the double-size image. Blue against vermilion against violet stay
/// apart for colour-blind readers, and every kind has a shape or a pattern of its own besides.
/// </summary>
internal static class Ink
{
    public const int Width = 1200;
    public const int Height = 690;
    public const float Text = 30;
    public const float Left = 108;
    public const float Right = 238;
    public const float Row = 42;

    /// <summary>Room below the frame: tick labels, then the title of the hours with the key.</summary>
    public const float Below = 114;

    /// <summary>Blue: what is measured, and what is as it should be.</summary>
    public const string First = "#0B4F8A";

    /// <summary>Vermilion: what needs somebody.</summary>
    public const string Alarm = "#B53A0B";

    /// <summary>Violet: what will.</summary>
    public const string Second = "#8B3FD9";

    /// <summary>Grey: what says nothing yet.</summary>
    public const string Pale = "#52606D";

    public static readonly SKColor Words = new(0x1F, 0x29, 0x33);
    public static readonly SKColor Quiet = SKColor.Parse(Pale);
    public static readonly SKColor Series = SKColor.Parse(First);
    public static readonly SKColor BandWords = new(0x1B, 0x6B, 0x5A);

    public static readonly Color Line = Color.FromHex(First);
    public static readonly Color Band = Color.FromHex("#2A9D8F");
    public static readonly Color BandEdge = Color.FromHex("#1B6B5A");
    public static readonly Color Grid = Color.FromHex("#E4E7EB");
    public static readonly Color Frame = Color.FromHex("#9AA5B1");
    public static readonly Color Faint = Color.FromHex(Pale);

    public static SKColor Of(HistoryMarkKind kind) => kind switch
    {
        HistoryMarkKind.Strike => SKColor.Parse(Alarm),
        HistoryMarkKind.Repitch => SKColor.Parse(Second),
        _ => Quiet,
    };

    public static Color ForPlot(SKColor color) => new(color.Red, color.Green, color.Blue);
}
