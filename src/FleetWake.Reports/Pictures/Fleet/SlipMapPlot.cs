using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures.Fleet;

/// <summary>Draws the map: change of RPM across, change of slip up, the groups named in their corners.</summary>
internal static class SlipMapPlot
{
    private const int Height = 900;
    private const float Left = 96;
    private const float Right = 30;
    private const float Top = 62;
    private const float Below = 100;
    private const int MostNamed = 14;
    private const int MostBars = 40; // more would be a thicket

    private static readonly (SlipRegion Region, bool Right, bool Up, string First, string Second)[] s_corners =
    [
        (SlipRegion.PropLetsGo, true, true, "turns faster, slips more:", "worn prop, hub, air"),
        (SlipRegion.MoreToPush, false, true, "turns slower, slips more:", "load or growth"),
        (SlipRegion.LessPower, false, false, "turns slower, slips alike:", "weak engine, rough blades"),
        (SlipRegion.LessToPush, true, false, "turns faster, slips less:", "a lighter load"),
    ];

    public static Sheet Sheet(SlipMap map, Pens pens) => new(Of(map), Height, canvas => Words(new Brush(canvas, pens), map));

    private static Plot Of(SlipMap map)
    {
        var plot = new Plot();
        PlotLook.Of(plot);
        PlotLook.Ticks(plot.Axes.Bottom, 7, Signed);
        PlotLook.Ticks(plot.Axes.Left, 7, Signed);
        var (x, y) = (map.ReachPercent, map.ReachPoints);
        PlotLook.Stroke(plot.Add.Line(-x, 0, x, 0), Ink.Frame, 2.5f, LinePattern.Solid);
        PlotLook.Stroke(plot.Add.Line(0, -y, 0, y), Ink.Frame, 2.5f, LinePattern.Solid);
        // The line between a hull that is held back and an engine that lacks power, as far as it stays on the map.
        var end = Math.Min(x, y / SlipMap.HullSlope);
        PlotLook.Stroke(plot.Add.Line(0, 0, -end, end * SlipMap.HullSlope), Ink.Frame, 2.5f, LinePattern.Dashed);
        plot.Axes.SetLimits(-x, x, -y, y);
        plot.Layout.Fixed(new PixelPadding(Left, Right, Below, Top));
        return plot;
    }

    private static void Words(Brush brush, SlipMap map)
    {
        var (taken, crowd) = (Corners(brush), map.Marks.Count > 100);
        List<SKRect> bars = map.Marks.Count(m => m.Sure) <= MostBars ? [.. map.Marks.Where(m => m.Sure).SelectMany(m => Bars(brush, map, m))] : [];
        foreach (var m in map.Marks.Reverse())
        {
            var (x, y) = At(map, m);
            brush.Mark(m.Sure ? Sign.Stands : Sign.Unsure, x, y, (m.Sure ? 26 : 16) / (crowd ? 2 : 1), m.Sure && !crowd ? 3 : 0);
            if (m.Sure) taken.Add(new SKRect(x - 15, y - 15, x + 15, y + 15));
        }

        foreach (var m in map.Marks.Where(m => m.Sure).Take(MostNamed)) Name(brush, taken, bars, map, m);
        brush.Write("change of slip since the baseline, percentage points", 12, 36, Ink.Quiet);
        brush.Write("change of RPM, %", Ink.Width - Right, Height - 22, Ink.Quiet, false, SKTextAlign.Right);
        brush.Mark(Sign.Stands, Left + 12, Height - 32, 24, 0);
        brush.Write("moved, bars hold 80 %", Left + 34, Height - 22, Ink.Quiet);
        brush.Mark(Sign.Unsure, Left + 400, Height - 32, 18, 0);
        brush.Write("within doubt", Left + 420, Height - 22, Ink.Quiet);
    }

    private static List<SKRect> Corners(Brush brush)
    {
        var boxes = new List<SKRect>();
        foreach (var (_, right, up, first, second) in s_corners)
        {
            var wide = Math.Max(brush.Width(first), brush.Width(second, true));
            var x = right ? Ink.Width - Right - wide - 8 : Left + 10;
            var y = up ? Top + 36 : Height - Below - 54;
            brush.Fill(new SKRect(x - 6, y - 30, x + wide + 6, y + 48), SKColors.White.WithAlpha(225));
            brush.Write(first, x, y, Ink.Quiet);
            brush.Write(second, x, y + 36, Ink.Quiet, true);
            boxes.Add(new SKRect(x - 6, y - 30, x + wide + 6, y + 48));
        }

        return boxes;
    }

    /// <summary>Draws how far a mark is in doubt and tells where.</summary>
    private static SKRect[] Bars(Brush brush, SlipMap map, SlipMark m)
    {
        var (x, y) = At(map, m);
        var (wide, high) = ((float)(m.RpmHalf / (2 * map.ReachPercent) * (Ink.Width - Left - Right)), (float)(m.SlipHalf / (2 * map.ReachPoints) * (Height - Top - Below)));
        var color = SKColor.Parse(Sign.Stands.Hex).WithAlpha(140);
        brush.Line(x - wide, y, x + wide, y, color, 3);
        brush.Line(x, y - high, x, y + high, color, 3);
        return [new SKRect(x - wide, y - 2, x + wide, y + 2), new SKRect(x - 2, y - high, x + 2, y + high)];
    }

    /// <summary>Beside its mark where there is room, on no bar if it can be; a name without room stands in the sentence.</summary>
    private static void Name(Brush brush, List<SKRect> taken, List<SKRect> bars, SlipMap map, SlipMark mark)
    {
        var (x, y) = At(map, mark);
        var words = Fitting.To(Fitting.Name(mark.Name), w => brush.Width(w, true), 330);
        var wide = brush.Width(words, true) + 8;
        (float X, float Y)[] places = [(18, -18), (-18 - wide, -18), (-wide / 2, -56), (-wide / 2, 20), (18, -50), (18, 14), (-18 - wide, -50), (-18 - wide, 14)];
        List<SKRect> free = [.. places.Select(p => new SKRect(x + p.X, y + p.Y, x + p.X + wide, y + p.Y + 36))
            .Where(b => b.Left >= Left && b.Right <= Ink.Width - 8 && b.Top >= Top && b.Bottom <= Height - Below && !taken.Exists(t => t.IntersectsWith(b)))];
        if (free.Count == 0) return;
        var box = free.MinBy(b => bars.Count(b.IntersectsWith));
        brush.WriteOn(words, box, Ink.Words, true);
        taken.Add(box);
    }

    private static (float X, float Y) At(SlipMap map, SlipMark m) => (
        Left + (float)((m.RpmPercent + map.ReachPercent) / (2 * map.ReachPercent) * (Ink.Width - Left - Right)),
        Top + (float)((map.ReachPoints - m.SlipPoints) / (2 * map.ReachPoints) * (Height - Top - Below)));

    private static string Signed(double v) => v == 0 ? "0" : $"{v:+0;-0}";
}
