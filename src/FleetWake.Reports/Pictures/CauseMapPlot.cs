using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>Draws a map of causes: RPM across, speed up, the same scale on both, a ray for each cause, an ellipse for each trial's doubt.</summary>
internal static class CauseMapPlot
{
    private const int Height = 940;
    private const float Left = 110;
    private const float Right = 190;
    private const float Top = 70;
    private const float Below = 120;
    private const double Deviations = 1.794; // radius that holds 80 % of a bivariate normal: sqrt(-2 ln 0.2)

    public static Sheet Sheet(CauseMap map, Pens pens) => new(Of(map), Height, canvas => Label(canvas, map, pens.Text, pens.Strong));

    private static Plot Of(CauseMap map)
    {
        var plot = new Plot();
        PlotLook.Of(plot);
        PlotLook.Ticks(plot.Axes.Bottom, 7, Percent);
        PlotLook.Ticks(plot.Axes.Left, 7, Percent);
        var (x, y) = Reach(map);
        PlotLook.Stroke(plot.Add.Line(-x, 0, x, 0), Ink.Frame, 2, LinePattern.Solid);
        PlotLook.Stroke(plot.Add.Line(0, -y, 0, y), Ink.Frame, 2, LinePattern.Solid);
        foreach (var ray in map.Rays)
        {
            var color = Of(ray);
            PlotLook.Stroke(plot.Add.Line(0, 0, ray.RpmPercent, ray.SpeedPercent), color, ray.Likely ? 5 : 2.5f, ray.Likely ? LinePattern.Solid : LinePattern.Dotted);
            // Groups differ by shape as well as by colour.
            PlotLook.Mark(plot, ray.RpmPercent, ray.SpeedPercent, ray.RpmUp ? MarkerShape.FilledTriangleUp : MarkerShape.FilledTriangleDown, ray.Likely ? 22 : 15, color);
        }

        foreach (var change in map.Changes)
        {
            var ring = plot.Add.Ellipse(new Coordinates(change.RpmPercent, change.SpeedPercent), Axes(change).Across, Axes(change).Along, Angle.FromDegrees(Axes(change).Degrees));
            ring.FillStyle.Color = Ink.Line.WithAlpha(ReferenceEquals(change, map.Changes[^1]) ? .16 : .06);
            ring.LineColor = Ink.Line.WithAlpha(.5);
            ring.LineWidth = 2;
        }

        foreach (var change in map.Changes)
            PlotLook.Mark(plot, change.RpmPercent, change.SpeedPercent, MarkerShape.FilledCircle, ReferenceEquals(change, map.Changes[^1]) ? 22 : 13, Ink.Line);
        PlotLook.Mark(plot, 0, 0, MarkerShape.FilledSquare, 16, Ink.Faint);
        plot.Axes.SetLimits(-x, x, -y, y);
        plot.Layout.Fixed(new PixelPadding(Left, Right, Below, Top));
        return plot;
    }

    private static void Label(SKCanvas canvas, CauseMap map, SKFont text, SKFont strong)
    {
        using var words = new SKPaint { Color = Ink.Words, IsAntialias = true };
        using var quiet = new SKPaint { Color = Ink.Quiet, IsAntialias = true };
        using var white = new SKPaint { Color = SKColors.White.WithAlpha(215) };
        var taken = new List<SKRect>();
        void Write(string label, double rpm, double speed, SKFont font, SKPaint paint)
        {
            var (px, py) = At(map, rpm, speed);
            var width = font.MeasureText(label);
            var box = Free(taken, px, py, width, rpm >= 0, speed < 0);
            canvas.DrawRect(box, white);
            canvas.DrawText(label, box.Left + 4, box.Bottom - 8, SKTextAlign.Left, font, paint);
            taken.Add(box);
        }

        // No label may cover a mark.
        foreach (var (rpm, speed) in map.Rays.Select(r => (r.RpmPercent, r.SpeedPercent)).Concat(map.Changes.Select(c => (c.RpmPercent, c.SpeedPercent))))
        {
            var (px, py) = At(map, rpm, speed);
            taken.Add(new SKRect(px - 14, py - 14, px + 14, py + 14));
        }

        foreach (var ray in map.Rays.OrderByDescending(r => r.Likely))
        {
            using var paint = new SKPaint { Color = ray.Likely ? Ink.Words : Ink.Quiet, IsAntialias = true };
            Write(ray.Label, ray.RpmPercent, ray.SpeedPercent, ray.Likely ? strong : text, paint);
        }

        if (map.Changes is [.., var last]) Write("last trial", last.RpmPercent, last.SpeedPercent, strong, words);

        canvas.DrawText("speed against the baseline, %", Left - 90, Top - 26, SKTextAlign.Left, text, quiet);
        canvas.DrawText("RPM against the baseline, %", Ink.Width - 30, Height - 26, SKTextAlign.Right, text, quiet);
        canvas.DrawText("rings hold 80 %; bold: likeliest", Left - 90, Height - 26, SKTextAlign.Left, text, quiet);
    }

    private static SKRect Free(List<SKRect> taken, float x, float y, float width, bool right, bool down)
    {
        const float Line = 40;
        // Away from the middle first: a label that lies over the rays hides what it names.
        foreach (var (rows, side) in ((int, bool)[])[(0, right), (0, !right), (-1, right), (1, right), (-1, !right), (1, !right), (-2, right), (2, right), (-3, right), (3, right)])
        {
            var left = Math.Clamp(side ? x + 20 : x - 28 - width, Left, Ink.Width - width - 12);
            var top = Math.Clamp(y + (Line * (down ? -rows : rows)) - (Line / 2), Top, Height - Below - Line);
            var box = new SKRect(left, top, left + width + 8, top + Line);
            if (!taken.Exists(t => t.IntersectsWith(box))) return box;
        }

        return new SKRect(x, y, x + width + 8, y + Line);
    }

    private static Color Of(CauseRay ray) => ray.Likely ? (ray.RpmUp ? Color.FromHex(Ink.Alarm) : Color.FromHex(Ink.Second)) : Ink.Frame;

    /// <summary>Half axes [%] and turn [degrees] of the ellipse that holds 80 %.</summary>
    private static (double Across, double Along, double Degrees) Axes(MappedChange c)
    {
        var (vx, vy, cxy) = (c.RpmSd * c.RpmSd, c.SpeedSd * c.SpeedSd, c.Correlation * c.RpmSd * c.SpeedSd);
        var (mean, half) = ((vx + vy) / 2, Math.Sqrt(Math.Pow((vx - vy) / 2, 2) + (cxy * cxy)));
        return (Deviations * Math.Sqrt(mean + half), Deviations * Math.Sqrt(Math.Max(0, mean - half)), Math.Atan2(2 * cxy, vx - vy) / 2 * 180 / Math.PI);
    }

    /// <summary>Half width and half height of the map [%]; one per cent is as long across as up.</summary>
    private static (double X, double Y) Reach(CauseMap map)
    {
        var (w, h) = (Ink.Width - Left - Right, Height - Top - Below);
        return (map.ReachPercent * w / h, map.ReachPercent);
    }

    private static (float X, float Y) At(CauseMap map, double rpm, double speed)
    {
        var (x, y) = Reach(map);
        return (
            Left + (float)((rpm + x) / (2 * x) * (Ink.Width - Left - Right)),
            Top + (float)((y - speed) / (2 * y) * (Height - Top - Below)));
    }

    private static string Percent(double v) => v == 0 ? "0" : $"{v:+0;-0}";
}
