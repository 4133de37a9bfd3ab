using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>The words of a picture: titles of the axes, labels of the marks above, values at the right, the key below.</summary>
internal sealed class DriftLabels(SKCanvas canvas, SKFont text, SKFont strong, DriftPicture picture, SKRect frame)
{
    public void Draw(IReadOnlyList<PlacedLabel> placed, IReadOnlyList<DriftPlot.Event> events)
    {
        Write(picture.AtReference ? "RPM at wide-open throttle, at reference air" : "RPM at wide-open throttle, as read", 12, 36, Ink.Quiet, text);
        foreach (var label in placed)
        {
            var y = frame.Top - 16 - (label.Row * Ink.Row);
            using var pole = new SKPaint { Color = events[label.Index].Color, StrokeWidth = 3 };
            canvas.DrawLine(label.X, frame.Top, label.X, y - 20, pole);
            Write(label.Text, label.Left, y, events[label.Index].Color, strong);
        }

        Side();
        Pinned();
        Wrong(events);
        Below();
    }

    private void Side()
    {
        var wished = new List<SideLabel>();
        if (picture.Band is { } band)
        {
            wished.Add(new SideLabel(Y(band.HighRpm), Edge("top", band.HighRpm), true, true));
            wished.Add(new SideLabel(Y(band.LowRpm), Edge("bottom", band.LowRpm), true, true));
        }

        if (picture.BaselineRpm is { } baseline) wished.Add(new SideLabel(Y(baseline), $"baseline {baseline:0}", false, false));
        if (picture.Points.LastOrDefault(p => p.Kind == PointKind.Counted) is { } last)
            wished.Add(new SideLabel(Y(last.Rpm), $"last {last.Rpm:0}", true, false));
        foreach (var label in SideLabels.Spread(wished, Ink.Row - 2, frame.Top + 12, frame.Bottom - 14))
            Write(label.Text, frame.Right + 14, label.Y + 11, label.OfBand ? Ink.BandWords : label.Strong ? Ink.Series : Ink.Quiet, label.Strong ? strong : text);
    }

    // An edge outside the window is named at the frame with an arrow to where it lies.
    private string Edge(string name, double rpm) =>
        rpm > picture.Window.ToRpm ? $"{name} {rpm:0} ↑" : rpm < picture.Window.FromRpm ? $"{name} {rpm:0} ↓" : $"{name} {rpm:0}";

    private void Pinned()
    {
        foreach (var p in picture.Points.Where(p => p.Rpm < picture.Window.FromRpm))
            Write($"{p.Rpm:0} ↓", X(p.Hours) + 16, frame.Bottom - 8, Ink.Quiet, text);
    }

    /// <summary>How likely a reading is wrong, beside its ring: clear of other marks, of the lines and of the frame.</summary>
    private void Wrong(IReadOnlyList<DriftPlot.Event> events)
    {
        using var white = new SKPaint { Color = SKColors.White.WithAlpha(225) };
        const int OfMark = 10;
        var taken = picture.Points.Select(p => (Box: Box(X(p.Hours), Y(p.Rpm), p.WrongChance is null ? 14 : 20), Weight: OfMark)).ToList();
        taken.AddRange(events.Select(e => (new SKRect(X(e.At) - 3, frame.Top, X(e.At) + 3, frame.Bottom), 1)));
        taken.AddRange((picture.Line?.Points ?? []).Select(p => (Box(X(p.Hours), Y(p.Rpm), 8), 1)));
        foreach (var p in picture.Points.Where(p => p.WrongChance is not null && p.Rpm >= picture.Window.FromRpm))
        {
            var words = $"{Math.Min(99, Math.Round(100 * p.WrongChance!.Value)):0}\u00A0% out of line";
            var (wide, high) = (text.MeasureText(words) + 8, 36f);
            var (x, y) = (X(p.Hours), Y(p.Rpm));
            var places = new[] { (x + 24, y - 18), (x - 24 - wide, y - 18), (x - (wide / 2), y + 24), (x - (wide / 2), y - 60), (x + 16, y + 18), (x + 16, y - 56), (x - 16 - wide, y + 18), (x - 16 - wide, y - 56) }
                .Select(at => new SKRect(at.Item1, at.Item2, at.Item1 + wide, at.Item2 + high))
                .Where(b => b.Left >= frame.Left && b.Right <= frame.Right + 6 && b.Top >= frame.Top && b.Bottom <= frame.Bottom).ToList();
            if (places.Count == 0) continue;
            int Covers(SKRect b) => taken.Where(t => t.Box.IntersectsWith(b)).Sum(t => t.Weight);
            var box = places.MinBy(Covers);
            if (Covers(box) > 0) canvas.DrawRect(box, white);
            Write(words, box.Left + 4, box.Bottom - 8, Ink.Quiet, text);
            taken.Add((box, OfMark));
        }
    }

    private static SKRect Box(float x, float y, float half) => new(x - half, y - half, x + half, y + half);

    private void Below()
    {
        var bottom = frame.Bottom + Ink.Below;
        if (picture.Outlook is { } outlook) Write(outlook, frame.Left, bottom + Ink.Row - 20, Ink.Words, text);
        var y = bottom - 20f;
        Write("engine hours", frame.Left, y, Ink.Quiet, text);
        var x = (float)Ink.Width - 12;
        var key = Key().ToList();
        if (key.Sum(k => text.MeasureText(k.Label) + 62) > Ink.Width - frame.Left - text.MeasureText("engine hours") - 40)
            key = [.. key.Select(k => k.Kind is null ? (k.Kind, "level") : k)];
        foreach (var (kind, label) in key.AsEnumerable().Reverse())
        {
            x -= text.MeasureText(label);
            Write(label, x, y, Ink.Quiet, text);
            x -= 22;
            Sign(kind, x, y - 9);
            x -= 40;
        }
    }

    private IEnumerable<(PointKind? Kind, string Label)> Key()
    {
        bool Has(PointKind kind) => picture.Points.Any(p => p.Kind == kind);
        if (Has(PointKind.Counted)) yield return (PointKind.Counted, "counted");
        if (Has(PointKind.EarlierStretch)) yield return (PointKind.EarlierStretch, "earlier stretch");
        if (Has(PointKind.AtLeast)) yield return (PointKind.AtLeast, "limiter: at least");
        if (Has(PointKind.SetAside)) yield return (PointKind.SetAside, "set aside");
        if (Has(PointKind.AtHelm)) yield return (PointKind.AtHelm, "read at the helm");
        if (picture.Line is { Points.Count: > 1 } line) yield return (null, $"level with {Phrases.Percent(line.Level)} interval");
    }

    private void Sign(PointKind? kind, float x, float y)
    {
        using var paint = new SKPaint { IsAntialias = true, StrokeWidth = 4, Style = SKPaintStyle.Stroke, Color = new SKColor(0x52, 0x60, 0x6D) };
        switch (kind)
        {
            case PointKind.Counted:
                paint.Style = SKPaintStyle.Fill;
                paint.Color = Ink.Series;
                canvas.DrawCircle(x, y, 10, paint);
                break;
            case PointKind.EarlierStretch:
                paint.Color = Ink.Series;
                canvas.DrawCircle(x, y, 8, paint);
                break;
            case PointKind.AtLeast:
                using (var path = new SKPath())
                {
                    path.AddPoly([new SKPoint(x - 9, y + 8), new SKPoint(x, y - 9), new SKPoint(x + 9, y + 8)]);
                    canvas.DrawPath(path, paint);
                }

                break;
            case PointKind.AtHelm:
                canvas.DrawRect(x - 8, y - 8, 16, 16, paint);
                break;
            case PointKind.SetAside:
                canvas.DrawLine(x - 8, y - 8, x + 8, y + 8, paint);
                canvas.DrawLine(x - 8, y + 8, x + 8, y - 8, paint);
                break;
            default:
                paint.Style = SKPaintStyle.Fill;
                paint.Color = Ink.Series.WithAlpha(60);
                canvas.DrawRect(x - 16, y - 10, 30, 20, paint);
                paint.Color = Ink.Series;
                canvas.DrawRect(x - 16, y - 2, 30, 4, paint);
                break;
        }
    }

    private float X(double hours) => frame.Left + (float)((hours - picture.Window.FromHours) / (picture.Window.ToHours - picture.Window.FromHours) * frame.Width);

    private float Y(double rpm) => frame.Bottom - (float)((rpm - picture.Window.FromRpm) / (picture.Window.ToRpm - picture.Window.FromRpm) * frame.Height);

    private void Write(string words, float x, float y, SKColor color, SKFont font)
    {
        using var paint = new SKPaint { Color = color, IsAntialias = true };
        canvas.DrawText(words, x, y, SKTextAlign.Left, font, paint);
    }
}
