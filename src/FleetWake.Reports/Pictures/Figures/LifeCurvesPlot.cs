using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures.Figures;

/// <summary>Draws life curves: staircases that differ in pattern as well as in colour, each named at its end.</summary>
internal static class LifeCurvesPlot
{
    private const int Height = 720;
    private const float Right = 300;
    private const float Top = 62;

    /// <summary>Colour and pattern of each curve; a test holds the pairs apart.</summary>
    public static IReadOnlyList<(string Hex, float[] Dashes)> Strokes { get; } =
        [(Ink.First, []), (Ink.Alarm, [18, 8]), (Ink.Second, [4, 7]), (Ink.Pale, [24, 7, 4, 7])];

    public static Sheet Sheet(LifeCurves picture, Pens pens) => new(Of(picture), HeightOf(picture), canvas => Words(new Brush(canvas, pens), picture));

    private static int HeightOf(LifeCurves picture) => Height + (picture.Note is null ? 0 : (int)Ink.Row);

    private static float Below(LifeCurves picture) => Ink.Below + (picture.Note is null ? 0 : Ink.Row);

    private static Plot Of(LifeCurves picture)
    {
        var plot = new Plot();
        PlotLook.Of(plot);
        plot.Grid.XAxisStyle.IsVisible = false;
        PlotLook.Ticks(plot.Axes.Bottom, 6, v => $"{v:0}");
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual([0, .25, .5, .75, 1], ["0", "25 %", "50 %", "75 %", "100 %"]);
        foreach (var (curve, stroke) in picture.Curves.Zip(Strokes))
        {
            var (x, low, high) = (Stairs(curve, s => s.Alive).X, Stairs(curve, s => s.Low).Y, Stairs(curve, s => s.High).Y);
            var fill = plot.Add.FillY(x, low, high);
            fill.FillColor = Color.FromHex(stroke.Hex).WithAlpha(.06);
            fill.LineWidth = 0;
            fill.MarkerSize = 0;
            // Where fills lie over one another, their edges tell whose is whose.
            foreach (var edge in new[] { low, high }) plot.Add.ScatterLine(x, edge, Color.FromHex(stroke.Hex).WithAlpha(.55)).LineWidth = 1.5f;
        }

        foreach (var (curve, stroke) in picture.Curves.Zip(Strokes))
        {
            var (x, y) = Stairs(curve, s => s.Alive);
            var line = plot.Add.ScatterLine(x, y, Color.FromHex(stroke.Hex));
            line.LineWidth = 5;
            line.LinePattern = stroke.Dashes.Length == 0 ? LinePattern.Solid : new LinePattern(stroke.Dashes, 0, "life");
        }

        PlotLook.Stroke(plot.Add.Line(0, .5, picture.ToHours, .5), Ink.Faint, 2.5f, LinePattern.Dotted);
        plot.Axes.SetLimits(0, picture.ToHours, 0, 1.03);
        plot.Layout.Fixed(new PixelPadding(Ink.Left, Right, Below(picture), Top));
        return plot;
    }

    private static (double[] X, double[] Y) Stairs(LifeCurve curve, Func<LifeStep, double> of)
    {
        var (x, y) = (new List<double>(), new List<double>());
        foreach (var (i, step) in curve.Steps.Index())
        {
            if (i > 0)
            {
                x.Add(step.Hours);
                y.Add(of(curve.Steps[i - 1]));
            }

            x.Add(step.Hours);
            y.Add(of(step));
        }

        return ([.. x], [.. y]);
    }

    private static void Words(Brush brush, LifeCurves picture)
    {
        var frame = new SKRect(Ink.Left, Top, Ink.Width - Right, HeightOf(picture) - Below(picture));
        brush.Write("share of props that last longer", 12, 36, Ink.Quiet);
        // In the order in which the curves lie one over another.
        foreach (var (i, curve) in picture.Curves.Index())
        {
            var (stroke, y) = (Strokes[i], frame.Top + 24 + (i * 2.6f * Ink.Row));
            var color = SKColor.Parse(stroke.Hex);
            brush.Path([new(frame.Right + 12, y - 10), new(frame.Right + 58, y - 10)], color, 5, stroke.Dashes.Length == 0 ? null : stroke.Dashes);
            brush.Write(Fitting.To(curve.Group, w => brush.Width(w, true), Right - 78), frame.Right + 66, y, color, true);
            brush.Write(curve.MedianHours is { } half ? $"half: {half:0} h" : curve.LowHours is { } low ? $"half: over {low:0} h" : "half: not seen", frame.Right + 66, y + 36, Ink.Quiet);
            brush.Write($"{curve.Ended} of {curve.Props} ended", frame.Right + 66, y + 72, Ink.Quiet);
        }

        var bottom = frame.Bottom + Ink.Below - 20;
        brush.Write("engine hours", frame.Left, bottom, Ink.Quiet);
        brush.Write($"shaded: {Phrases.Percent(picture.Level)} limits", Ink.Width - 12, bottom, Ink.Quiet, false, SKTextAlign.Right);
        if (picture.Note is { } note) brush.Write(Fitting.To(note, w => brush.Width(w), Ink.Width - frame.Left - 20), frame.Left, bottom + Ink.Row, Ink.Quiet);
    }
}
