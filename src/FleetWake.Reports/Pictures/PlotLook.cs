using ScottPlot;

namespace FleetWake.Reports.Pictures;

/// <summary>The look that all plots share: white, one frame line below, quiet ticks in the bundled font.</summary>
internal static class PlotLook
{
    public static void Of(Plot plot)
    {
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Grid.MajorLineColor = Ink.Grid;
        plot.Grid.MajorLineWidth = 2;
        plot.Axes.Top.FrameLineStyle.IsVisible = false;
        plot.Axes.Right.FrameLineStyle.IsVisible = false;
        plot.Axes.Left.FrameLineStyle.IsVisible = false;
        plot.Axes.Bottom.FrameLineStyle.Color = Ink.Frame;
        plot.Axes.Bottom.FrameLineStyle.Width = 2;
        foreach (var axis in new IAxis[] { plot.Axes.Left, plot.Axes.Bottom })
        {
            axis.TickLabelStyle.FontName = PictureFonts.Family;
            axis.TickLabelStyle.FontSize = Ink.Text;
            axis.TickLabelStyle.ForeColor = Ink.Faint;
            axis.MinorTickStyle.Length = 0;
            axis.MajorTickStyle.Length = axis == plot.Axes.Left ? 0 : 8;
            axis.MajorTickStyle.Color = Ink.Frame;
        }
    }

    /// <summary>Ticks at round numbers, whole ones unless it is said otherwise.</summary>
    public static void Ticks(IAxis axis, int count, Func<double, string> label, bool wholeNumbers = true) => axis.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic
    {
        TargetTickCount = count,
        IntegerTicksOnly = wholeNumbers,
        LabelFormatter = label,
    };

    public static void Stroke(ScottPlot.Plottables.LinePlot line, Color color, float width, LinePattern pattern)
    {
        line.LineColor = color;
        line.LineWidth = width;
        line.LinePattern = pattern;
        line.MarkerSize = 0;
    }

    /// <summary>A filled mark with a white ring, so that it stands off what it covers.</summary>
    public static void Mark(Plot plot, double x, double y, MarkerShape shape, float size, Color color)
    {
        plot.Add.Marker(x, y, shape, size + 7, Colors.White);
        plot.Add.Marker(x, y, shape, size, color).MarkerStyle.LineWidth = 0;
    }
}
