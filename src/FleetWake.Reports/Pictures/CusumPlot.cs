using ScottPlot;

namespace FleetWake.Reports.Pictures;

/// <summary>Draws the sums: one place a trial, what lay above upwards, what lay below downwards, the line on both sides.</summary>
internal static class CusumPlot
{
    private const double BarWidth = 0.44;

    /// <summary>How far the plot reaches from its middle [standard deviations].</summary>
    public static double Reach(CusumPicture picture) =>
        1.12 * picture.Points.Max(p => Math.Max(picture.Limit + 0.6, Math.Max(p.Above ?? 0, p.Below ?? 0)));

    /// <summary>Left and right end of the plot [trials].</summary>
    public static (double From, double To) Span(CusumPicture picture) => (-0.7, Math.Max(picture.Points.Count, 4) - 0.3);

    public static Sheet Sheet(CusumPicture picture, Pens pens)
    {
        var labels = new CusumLabels(picture, pens.Text, pens.Strong);
        var plot = Of(picture);
        plot.Layout.Fixed(new PixelPadding(Ink.Left, Ink.Right, Ink.Below, labels.Top));
        return new Sheet(plot, CusumLabels.Height, labels.Draw);
    }

    private static Plot Of(CusumPicture picture)
    {
        var plot = new Plot();
        PlotLook.Of(plot);
        plot.Grid.XAxisStyle.IsVisible = false;
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericManual();
        PlotLook.Ticks(plot.Axes.Left, 5, v => $"{Math.Abs(v):0}");
        var (reach, (from, to)) = (Reach(picture), Span(picture));
        foreach (var side in new[] { picture.Limit, -picture.Limit })
            PlotLook.Stroke(plot.Add.Line(from, side, to, side), Ink.Faint, 4, LinePattern.Dashed);
        PlotLook.Stroke(plot.Add.Line(from, 0, to, 0), Ink.Frame, 2, LinePattern.Solid);
        foreach (var e in CusumLabels.Events(picture))
            PlotLook.Stroke(plot.Add.Line(e.At, -reach, e.At, reach), Ink.ForPlot(e.Color), 3, LinePattern.Dotted);
        foreach (var (i, point) in picture.Points.Index()) Point(plot, i, point, picture.Limit);
        plot.Axes.SetLimits(from, to, -reach, reach);
        return plot;
    }

    private static void Point(Plot plot, int at, CusumPoint point, double limit)
    {
        if (point is not { Above: { } above, Below: { } below })
        {
            var first = plot.Add.Marker(at, 0, MarkerShape.OpenCircle, 15, Ink.Faint);
            first.MarkerStyle.LineWidth = 4;
            first.MarkerStyle.LineColor = Ink.Faint;
            return;
        }

        Bar(plot, at, 0, above, above > limit);
        Bar(plot, at, -below, 0, below > limit);
        if (above > limit) PlotLook.Mark(plot, at, above, MarkerShape.FilledTriangleUp, 24, Ink.Line);
        if (below > limit) PlotLook.Mark(plot, at, -below, MarkerShape.FilledTriangleDown, 24, Ink.Line);
        if (above == 0 && below == 0) plot.Add.Marker(at, 0, MarkerShape.FilledCircle, 10, Ink.Line);
    }

    /// <summary>Full where it is past the line; else pale.</summary>
    private static void Bar(Plot plot, double at, double from, double to, bool past)
    {
        if (to - from < 1e-9) return;
        var bar = plot.Add.Rectangle(at - (BarWidth / 2), at + (BarWidth / 2), from, to);
        bar.FillColor = past ? Ink.Line : Ink.Line.WithAlpha(.38);
        bar.LineWidth = 0;
    }
}
