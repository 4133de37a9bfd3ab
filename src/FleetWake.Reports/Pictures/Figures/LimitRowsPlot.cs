using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures.Figures;

/// <summary>Draws rows of numbers with limits: a mark on its bar, the reference as a line down through all of them.</summary>
internal static class LimitRowsPlot
{
    private const float Left = 310;
    private const float Right = 300;
    private const float Top = 104;
    private const float RowHeight = 58;
    private const float Below = 66;

    public static Sheet Sheet(LimitRows picture, Pens pens) => new(Of(picture), HeightOf(picture), canvas => Words(new Brush(canvas, pens), picture));

    private static float Foot(LimitRows picture) => Below + (picture.Note is null ? 0 : Ink.Row);

    private static int HeightOf(LimitRows picture) => (int)(Top + Foot(picture) + (RowHeight * picture.Rows.Count));

    private static Plot Of(LimitRows picture)
    {
        var plot = new Plot();
        PlotLook.Of(plot);
        plot.Grid.YAxisStyle.IsVisible = false;
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        PlotLook.Ticks(plot.Axes.Bottom, 5, v => picture is CalibrationPicture ? $"{v:0} %" : $"{v:0.##}", wholeNumbers: picture.To > 4);
        var rows = picture.Rows.Count;
        PlotLook.Stroke(plot.Add.Line(picture.Reference, -.5, picture.Reference, rows - .5), Ink.Faint, 3.5f, LinePattern.Dashed);
        foreach (var (i, row) in picture.Rows.Index())
        {
            if (row.Value is not { } value) continue;
            var (y, sign) = (rows - 1 - i, row.Stands ? Sign.Stands : Sign.Usual);
            PlotLook.Stroke(plot.Add.Line(Math.Min(row.Low, picture.To), y, Math.Min(row.High ?? picture.To, picture.To), y), sign.Color.WithAlpha(row.Stands ? .75 : .5), 7, LinePattern.Solid);
            if (value <= picture.To) PlotLook.Mark(plot, value, y, row.Stands ? MarkerShape.FilledDiamond : MarkerShape.FilledCircle, row.Stands ? 28 : 21, sign.Color);
        }

        plot.Axes.SetLimits(0, picture.To, -.5, rows - .5);
        plot.Layout.Fixed(new PixelPadding(Left, Right, Foot(picture), Top));
        return plot;
    }

    private static void Words(Brush brush, LimitRows picture)
    {
        float X(double v) => Left + (float)(v / picture.To * (Ink.Width - Left - Right));
        brush.Write(Fitting.To(picture.Caption, w => brush.Width(w), Ink.Width - 24), 12, 36, Ink.Quiet);
        var label = picture.ReferenceLabel;
        var half = brush.Width(label, true) / 2;
        brush.Write(label, Math.Clamp(X(picture.Reference), Left + half, Ink.Width - 12 - half), Top - 18, Ink.Words, true, SKTextAlign.Center);
        foreach (var (i, row) in picture.Rows.Index())
        {
            var y = Top + (RowHeight * (i + .5f)) + 11;
            brush.Write(Fitting.To(row.Name, w => brush.Width(w, row.Stands), Left - 36), Left - 20, y, row.Stands ? Ink.Words : Ink.Quiet, row.Stands, SKTextAlign.Right);
            brush.Write(Fitting.To(row.Beside, w => brush.Width(w), Right - 32), Ink.Width - Right + 24, y, row.Stands ? Ink.Words : Ink.Quiet);
            if (row.Value is not null && (row.High is null || row.High > picture.To)) brush.Write("›", Ink.Width - Right + 2, y + 1, Ink.Quiet, true);
            if (row.Value is null) brush.Write("not known yet", Left + 14, y, Ink.Quiet);
        }

        if (picture.Note is { } note) brush.Write(Fitting.To(note, w => brush.Width(w), Ink.Width - 24), Ink.Width - 12, HeightOf(picture) - 18, Ink.Quiet, false, SKTextAlign.Right);
    }
}
