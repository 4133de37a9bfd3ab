using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>Draws words, lines and signs where they were placed; in pixels of the double-size image.</summary>
internal sealed class Brush(SKCanvas canvas, Pens pens)
{
    public float Width(string words, bool strong = false) => (strong ? pens.Strong : pens.Text).MeasureText(words);

    public void Write(string words, float x, float y, SKColor color, bool strong = false, SKTextAlign align = SKTextAlign.Left)
    {
        using var paint = new SKPaint { Color = color, IsAntialias = true };
        canvas.DrawText(words, x, y, align, strong ? pens.Strong : pens.Text, paint);
    }

    /// <summary>Words on a white ground that lets a little of what lies under them through.</summary>
    public void WriteOn(string words, SKRect box, SKColor color, bool strong = false)
    {
        Fill(box, SKColors.White.WithAlpha(225));
        Write(words, box.Left + 4, box.Bottom - 9, color, strong);
    }

    public void Line(float x1, float y1, float x2, float y2, SKColor color, float width, float[]? dashes = null)
    {
        using var effect = dashes is null ? null : SKPathEffect.CreateDash(dashes, 0);
        using var paint = new SKPaint { Color = color, StrokeWidth = width, IsAntialias = true, PathEffect = effect };
        canvas.DrawLine(x1, y1, x2, y2, paint);
    }

    public void Path(IReadOnlyList<SKPoint> points, SKColor color, float width, float[]? dashes = null)
    {
        if (points.Count < 2) return;
        using var effect = dashes is null ? null : SKPathEffect.CreateDash(dashes, 0);
        using var paint = new SKPaint { Color = color, StrokeWidth = width, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeJoin = SKStrokeJoin.Round, PathEffect = effect };
        using var path = new SKPath();
        path.AddPoly([.. points], close: false);
        canvas.DrawPath(path, paint);
    }

    public void Fill(SKRect box, SKColor color)
    {
        using var paint = new SKPaint { Color = color };
        canvas.DrawRect(box, paint);
    }

    /// <summary>A sign with a white ring, so that it stands off what it covers.</summary>
    /// <param name="sign">The sign.</param>
    /// <param name="x">Its middle.</param>
    /// <param name="y">Its middle.</param>
    /// <param name="size">Width of a plain circle.</param>
    /// <param name="ring">Width of the white ring.</param>
    public void Mark(Sign sign, float x, float y, float size, float ring = 3)
    {
        var half = size * sign.Size / 2;
        using var path = new SKPath();
        switch (sign.Shape)
        {
            case SignShape.TriangleUp: path.AddPoly([new(x - half, y + (0.8f * half)), new(x, y - half), new(x + half, y + (0.8f * half))]); break;
            case SignShape.TriangleDown: path.AddPoly([new(x - half, y - (0.8f * half)), new(x, y + half), new(x + half, y - (0.8f * half))]); break;
            case SignShape.Diamond: path.AddPoly([new(x - half, y), new(x, y - half), new(x + half, y), new(x, y + half)]); break;
            default: path.AddCircle(x, y, half); break;
        }

        using var paint = new SKPaint { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 2 * ring, Color = SKColors.White, StrokeJoin = SKStrokeJoin.Round };
        if (ring > 0) canvas.DrawPath(path, paint);
        (paint.Color, paint.Style, paint.StrokeWidth) = (SKColor.Parse(sign.Hex), sign.Shape == SignShape.Ring ? SKPaintStyle.Stroke : SKPaintStyle.Fill, Math.Max(2, size / 6));
        canvas.DrawPath(path, paint);
    }
}
