using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>Draws a correction: one row a step, the band behind them all.</summary>
internal static class CorrectionPlot
{
    private const float Left = 230;
    private const float Right = 190;
    private const float Top = 70;
    private const float RowHeight = 74;

    public static Sheet Sheet(CorrectionPicture picture, Pens pens) => new(Of(picture), Height(picture), canvas => Label(canvas, picture, pens.Text, pens.Strong));

    private static int Height(CorrectionPicture picture) => (int)(Top + Ink.Below + (RowHeight * picture.Steps.Count));

    private static Plot Of(CorrectionPicture picture)
    {
        var plot = new Plot();
        PlotLook.Of(plot);
        plot.Grid.YAxisStyle.IsVisible = false;
        PlotLook.Ticks(plot.Axes.Bottom, 5, v => $"{v:0}");
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        var (from, to) = Reach(picture);
        var rows = picture.Steps.Count;
        if (picture.Band is { } band)
        {
            var fill = plot.Add.Rectangle(Math.Max(band.LowRpm, from), Math.Min(band.HighRpm, to), -0.5, rows - 0.5);
            fill.FillColor = Ink.Band.WithAlpha(.15);
            fill.LineWidth = 0;
            foreach (var edge in new[] { band.LowRpm, band.HighRpm }.Where(e => e > from && e < to))
                PlotLook.Stroke(plot.Add.Line(edge, -0.5, edge, rows - 0.5), Ink.BandEdge, 2.5f, LinePattern.Solid);
        }

        for (var i = 0; i < rows; i++)
        {
            var step = picture.Steps[i];
            var y = rows - 1 - i;
            if (step.Half is { } half)
                PlotLook.Stroke(plot.Add.Line(step.Rpm - half, y, step.Rpm + half, y), Ink.Line, 7, LinePattern.Solid);
            var shape = step.AtLeast ? MarkerShape.FilledTriangleUp : step.Half is null ? MarkerShape.FilledCircle : MarkerShape.FilledDiamond;
            PlotLook.Mark(plot, step.Rpm, y, shape, step.Half is null ? 18 : 26, step.Half is null ? Ink.Faint : Ink.Line);
        }

        plot.Axes.SetLimits(from, to, -0.5, rows - 0.5);
        plot.Layout.Fixed(new PixelPadding(Left, Right, Ink.Below, Top));
        return plot;
    }

    private static void Label(SKCanvas canvas, CorrectionPicture picture, SKFont text, SKFont strong)
    {
        using var words = new SKPaint { Color = Ink.Words, IsAntialias = true };
        using var quiet = new SKPaint { Color = Ink.Quiet, IsAntialias = true };
        using var band = new SKPaint { Color = Ink.BandWords, IsAntialias = true };
        for (var i = 0; i < picture.Steps.Count; i++)
        {
            var step = picture.Steps[i];
            var y = Top + (RowHeight * (i + 0.5f)) + 11;
            canvas.DrawText(step.Label, Left - 24, y, SKTextAlign.Right, step.Half is null ? text : strong, step.Half is null ? quiet : words);
            canvas.DrawText($"{(step.AtLeast ? "\u2265 " : "")}{step.Rpm:0}", Ink.Width - Right + 24, y, SKTextAlign.Left, step.Half is null ? text : strong, step.Half is null ? quiet : words);
        }

        if (picture.Band is { } rated)
            canvas.DrawText($"rated band {rated.LowRpm:0} to {rated.HighRpm:0}", Left + 8, Top - 22, SKTextAlign.Left, text, band);
        canvas.DrawText("engine RPM; bars hold 80 %", Ink.Width - Right, Height(picture) - 22, SKTextAlign.Right, text, quiet);
    }

    /// <summary>All readings with their bars, and an edge of the band that lies near.</summary>
    private static (double From, double To) Reach(CorrectionPicture picture)
    {
        var (low, high) = (picture.Steps.Min(s => s.Rpm - (s.Half ?? 0)), picture.Steps.Max(s => s.Rpm + (s.Half ?? 0)));
        var room = Math.Max(60, 0.25 * (high - low));
        if (picture.Band is { } band)
        {
            var near = Math.Max(250, high - low);
            if (band.HighRpm > high && band.HighRpm - high < near) high = band.HighRpm;
            if (band.LowRpm < low && low - band.LowRpm < near) low = band.LowRpm;
        }

        return (low - room, high + room);
    }
}
