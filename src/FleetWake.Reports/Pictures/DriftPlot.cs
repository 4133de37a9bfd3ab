using FleetWake.Logbook.Findings;
using ScottPlot;
using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>What the plotting library draws of a picture: everything within the frame, and its axes.</summary>
internal static class DriftPlot
{
    private static readonly LinePattern Forecast = new([16, 11], 0, "forecast");

    /// <summary>A vertical line with its label: what happened, and where the line leaves the band.</summary>
    /// <param name="At">Place on the axis [h]; in a CUSUM, trials.</param>
    /// <param name="Label">What happened.</param>
    /// <param name="Color">Of line and label.</param>
    /// <param name="Effect">What it did to the RPM, where that is known; written where there is room.</param>
    internal sealed record Event(double At, string Label, SkiaSharp.SKColor Color, string? Effect = null);

    public static IReadOnlyList<Event> Events(DriftPicture picture)
    {
        var events = picture.Marks.Select(m => new Event(m.Hours, m.Label, Ink.Of(m.Kind), m.Effect)).ToList();
        if (picture.Exit is { } exit && exit.Hours <= picture.Window.ToHours)
            events.Add(new Event(exit.Hours, $"{(exit.Edge == BandEdge.Top ? "top" : "bottom")} about {exit.Hours:0} h", Ink.Series));
        if (picture.AlarmHours is { } alarm) events.Add(new Event(alarm, "drift alarm", Ink.Words));
        return [.. events.OrderBy(e => e.At)];
    }

    public static Sheet Sheet(DriftPicture picture, Pens pens)
    {
        var window = picture.Window;
        float X(double hours) => Ink.Left + (float)((hours - window.FromHours) / (window.ToHours - window.FromHours) * (Ink.Width - Ink.Left - Ink.Right));

        var events = Events(picture);
        var placed = MarkStrip.Place([.. events.Select(m => (X(m.At), m.Label, m.Effect))], s => pens.Strong.MeasureText(s), 12, Ink.Width - 12);
        var rows = placed.Count == 0 ? 0 : placed.Max(p => p.Row) + 1;
        var top = 58 + (rows * Ink.Row);
        var below = Ink.Below + (picture.Outlook is null ? 0 : Ink.Row);
        var height = (int)(Ink.Height - Ink.Below + below);

        var plot = Of(picture);
        plot.Layout.Fixed(new PixelPadding(Ink.Left, Ink.Right, below, top));
        var frame = new SKRect(Ink.Left, top, Ink.Width - Ink.Right, height - below);
        return new Sheet(plot, height, canvas => new DriftLabels(canvas, pens.Text, pens.Strong, picture, frame).Draw(placed, events));
    }

    private static Plot Of(DriftPicture picture)
    {
        var plot = new Plot();
        Axes(plot);
        var w = picture.Window;
        if (picture.Band is { } band) Band(plot, band, w);
        if (picture.BaselineRpm is { } baseline)
            PlotLook.Stroke(plot.Add.Line(w.FromHours, baseline, w.ToHours, baseline), Ink.Faint, 2.5f, LinePattern.Dashed);
        foreach (var e in Events(picture))
            PlotLook.Stroke(plot.Add.Line(e.At, w.FromRpm, e.At, w.ToRpm), Ink.ForPlot(e.Color), 3, LinePattern.Dotted);
        if (picture.Line is { } line) Line(plot, line);
        if (picture.Exit is { } exit) Exit(plot, exit, w);
        foreach (var point in picture.Points) Point(plot, point, w);
        plot.Axes.SetLimits(w.FromHours, w.ToHours, w.FromRpm, w.ToRpm);
        return plot;
    }

    private static void Axes(Plot plot)
    {
        PlotLook.Of(plot);
        plot.Grid.XAxisStyle.IsVisible = false;
        PlotLook.Ticks(plot.Axes.Left, 5, v => $"{v:0}");
        PlotLook.Ticks(plot.Axes.Bottom, 7, v => $"{v:0}");
    }

    private static void Band(Plot plot, RatedBand band, PictureWindow w)
    {
        var fill = plot.Add.Rectangle(w.FromHours, w.ToHours, Math.Max(band.LowRpm, w.FromRpm), Math.Min(band.HighRpm, w.ToRpm));
        fill.FillColor = Ink.Band.WithAlpha(.15);
        fill.LineWidth = 0;
        foreach (var edge in new[] { band.LowRpm, band.HighRpm })
            PlotLook.Stroke(plot.Add.Line(w.FromHours, edge, w.ToHours, edge), Ink.BandEdge, 2.5f, LinePattern.Solid);
    }

    private static void Line(Plot plot, DriftLine line)
    {
        var points = line.Points;
        if (points.Count < 2) return;
        var first = points.TakeWhile(p => !p.Forecast).ToList();
        var later = points.Skip(Math.Max(0, first.Count - 1)).ToList();
        foreach (var (part, pattern, alpha) in new[] { (first, LinePattern.Solid, .20), (later, Forecast, .11) })
        {
            if (part.Count < 2) continue;
            var x = part.Select(p => p.Hours).ToArray();
            var fill = plot.Add.FillY(x, [.. part.Select(p => p.LowRpm)], [.. part.Select(p => p.HighRpm)]);
            fill.FillColor = Ink.Line.WithAlpha(alpha);
            fill.LineWidth = 0;
            fill.MarkerSize = 0;
            var mean = plot.Add.ScatterLine(x, [.. part.Select(p => p.Rpm)], Ink.Line);
            mean.LineWidth = 4;
            mean.LinePattern = pattern;
        }
    }

    private static void Exit(Plot plot, PictureExit exit, PictureWindow w)
    {
        PlotLook.Stroke(plot.Add.Line(exit.EarliestHours, exit.Rpm, Math.Min(exit.LatestHours ?? w.ToHours, w.ToHours), exit.Rpm), Ink.Line, 9, LinePattern.Solid);
        if (exit.Hours <= w.ToHours) Dot(plot, exit.Hours, exit.Rpm, MarkerShape.FilledDiamond, 24);
    }

    private static void Point(Plot plot, PicturePoint point, PictureWindow w)
    {
        // Far below the rest (part throttle): pinned to the floor of the frame, with its number and an arrow.
        var floor = w.FromRpm + (0.035 * (w.ToRpm - w.FromRpm));
        if (point.Rpm < w.FromRpm) point = point with { Rpm = floor };
        if (point.WrongChance is { } wrong) Doubted(plot, point, wrong);
        else switch (point.Kind)
            {
                case PointKind.Counted: Dot(plot, point.Hours, point.Rpm, MarkerShape.FilledCircle, 21); break;
                case PointKind.EarlierStretch: Dot(plot, point.Hours, point.Rpm, MarkerShape.OpenCircle, 17); break;
                case PointKind.AtHelm: Dot(plot, point.Hours, point.Rpm, MarkerShape.OpenSquare, 18); break;
                case PointKind.AtLeast: Dot(plot, point.Hours, point.Rpm, MarkerShape.OpenTriangleUp, 20); break;
                default: Dot(plot, point.Hours, point.Rpm, MarkerShape.Eks, 18); break;
            }
    }

    /// <summary>Paler the likelier it is wrong, with a ring about it; its chance is written beside it.</summary>
    private static void Doubted(Plot plot, PicturePoint point, double wrong)
    {
        plot.Add.Marker(point.Hours, point.Rpm, MarkerShape.FilledCircle, 38, Colors.White);
        if (point.Kind == PointKind.Counted) plot.Add.Marker(point.Hours, point.Rpm, MarkerShape.FilledCircle, 19, Ink.Line.WithAlpha(Math.Max(0.15, 1 - wrong)));
        else Dot(plot, point.Hours, point.Rpm, MarkerShape.OpenCircle, 15);
        var ring = plot.Add.Marker(point.Hours, point.Rpm, MarkerShape.OpenCircle, 34, Ink.Faint);
        ring.MarkerStyle.LineWidth = 3;
        ring.MarkerStyle.LineColor = Ink.Faint;
    }

    private static void Dot(Plot plot, double x, double y, MarkerShape shape, float size)
    {
        if (shape is MarkerShape.FilledCircle or MarkerShape.FilledDiamond)
        {
            PlotLook.Mark(plot, x, y, shape, size, Ink.Line);
            return;
        }

        var marker = plot.Add.Marker(x, y, shape, size, Ink.Faint);
        marker.MarkerStyle.LineWidth = 4;
        marker.MarkerStyle.LineColor = shape == MarkerShape.OpenCircle ? Ink.Line : Ink.Faint;
    }
}
