using SkiaSharp;

namespace FleetWake.Reports.Pictures.Fleet;

/// <summary>Draws the panels, three abreast. Their axes are said once: at the left edge and at the foot.</summary>
internal sealed class DriftPanelsPlot(DriftPanels picture, Pens pens)
{
    private const int Abreast = 3;
    private const float Left = 100;
    private const float Right = 16;
    private const float Top = 58;
    private const float Gap = 18;
    private const float Head = 44;
    private const float Tall = 190;
    private const float Below = 96;
    private static readonly Sign s_earlier = new(SignShape.Ring, Ink.First);
    private static readonly float s_wide = (Ink.Width - Left - Right - (Gap * (Abreast - 1))) / Abreast;

    public static Sheet Sheet(DriftPanels picture, Pens pens) =>
        new(null, (int)(Top + (Rows(picture) * (Head + Tall + Gap)) + Below), new DriftPanelsPlot(picture, pens).Draw);

    private static int Rows(DriftPanels picture) => (picture.Panels.Count + Abreast - 1) / Abreast;

    private void Draw(SKCanvas canvas)
    {
        var brush = new Brush(canvas, pens);
        brush.Write("RPM over engine hours since the fitting, all on the same scales", 12, 36, Ink.Quiet);
        foreach (var (i, panel) in picture.Panels.Index())
        {
            var (column, row) = (i % Abreast, i / Abreast);
            var left = Left + (column * (s_wide + Gap));
            var top = Top + (row * (Head + Tall + Gap)) + Head;
            var frame = new SKRect(left, top, left + s_wide, top + Tall);
            if (column == 0) Scale(brush, frame);
            canvas.Save();
            canvas.ClipRect(new SKRect(frame.Left - 8, frame.Top, frame.Right + 8, frame.Bottom + 2));
            Panel(brush, panel, frame);
            canvas.Restore();
            Name(brush, panel, frame);
            if (i + Abreast >= picture.Panels.Count) Hours(brush, frame);
        }

        var y = Top + (Rows(picture) * (Head + Tall + Gap)) + Below - 24;
        var more = picture.LeftOut == 0 ? "" : $"; {picture.LeftOut} more not shown";
        brush.Write(Fitting.To($"shaded: rated band; number: drift, RPM per 100 h{more}", w => brush.Width(w), Ink.Width - Left - 10), Left, y, Ink.Quiet);
    }

    private static Sign Of(StripState state) => state switch
    {
        StripState.Above => Sign.Above,
        StripState.Below => Sign.Below,
        StripState.Leaving => Sign.Leaving,
        _ => Sign.Inside,
    };

    private void Panel(Brush brush, DriftPanel panel, SKRect frame)
    {
        brush.Fill(new SKRect(frame.Left, Y(frame, picture.Band.HighRpm), frame.Right, Y(frame, picture.Band.LowRpm)), SKColor.Parse("#2A9D8F").WithAlpha(38));
        foreach (var edge in new[] { picture.Band.LowRpm, picture.Band.HighRpm }) brush.Line(frame.Left, Y(frame, edge), frame.Right, Y(frame, edge), Ink.BandWords, 2.5f);
        brush.Line(frame.Left, frame.Bottom, frame.Right, frame.Bottom, SKColor.Parse("#9AA5B1"), 2);
        // The interval as thin lines: a shade over the shade of the band is not seen on a phone.
        SKPoint[] At(Func<Logbook.Findings.DriftPoint, double> rpm) => [.. panel.Line.Select(p => new SKPoint(X(frame, p.Hours), Y(frame, rpm(p))))];
        brush.Path(At(p => p.LowRpm), Ink.Series.WithAlpha(130), 2, [6, 5]);
        brush.Path(At(p => p.HighRpm), Ink.Series.WithAlpha(130), 2, [6, 5]);
        brush.Path(At(p => p.Rpm), Ink.Series, 5);
        foreach (var p in panel.Points)
            brush.Mark(p.WrongChance is not null ? Sign.Unsure : p.Kind == PointKind.Counted ? Sign.Usual : s_earlier, X(frame, p.Hours), Math.Clamp(Y(frame, p.Rpm), frame.Top + 8, frame.Bottom - 8), 14, 2);
    }

    private static void Name(Brush brush, DriftPanel panel, SKRect frame)
    {
        var (sign, drift) = (Of(panel.State), panel.DriftPer100Hours is { } d ? $"{d:+0;-0;0}" : "");
        var wide = drift.Length == 0 ? 0 : brush.Width(drift) + 12;
        brush.Mark(sign, frame.Left + 12, frame.Top - 22, 22, 0);
        brush.Write(Fitting.To(panel.Name, w => brush.Width(w, true), s_wide - 34 - wide), frame.Left + 30, frame.Top - 12, panel.State == StripState.Inside ? Ink.Words : SKColor.Parse(sign.Hex), true);
        brush.Write(drift, frame.Right, frame.Top - 12, Ink.Quiet, false, SKTextAlign.Right);
    }

    private void Scale(Brush brush, SKRect frame)
    {
        brush.Write($"{picture.Band.HighRpm:0}", frame.Left - 10, Y(frame, picture.Band.HighRpm) + 11, Ink.BandWords, true, SKTextAlign.Right);
        brush.Write($"{picture.Band.LowRpm:0}", frame.Left - 10, Y(frame, picture.Band.LowRpm) + 11, Ink.BandWords, true, SKTextAlign.Right);
    }

    private void Hours(Brush brush, SKRect frame)
    {
        // Once is enough: beside the end of its neighbour's scale it would read as one number.
        if (frame.Left <= Left) brush.Write("0", frame.Left, frame.Bottom + 34, Ink.Quiet);
        brush.Write($"{picture.Window.ToHours:0} h", frame.Right, frame.Bottom + 34, Ink.Quiet, false, SKTextAlign.Right);
    }

    private float X(SKRect frame, double hours) => frame.Left + (float)(hours / picture.Window.ToHours * frame.Width);

    private float Y(SKRect frame, double rpm) =>
        frame.Bottom - (float)((rpm - picture.Window.FromRpm) / (picture.Window.ToRpm - picture.Window.FromRpm) * frame.Height);
}
