using SkiaSharp;

namespace FleetWake.Reports.Pictures;

/// <summary>The words about the sums: what began them anew above, when each trial was run below, what the line says at the right.</summary>
internal sealed class CusumLabels
{
    public const int Height = 620;

    private readonly CusumPicture picture;
    private readonly SKFont text;
    private readonly SKFont strong;
    private readonly IReadOnlyList<DriftPlot.Event> events;
    private readonly IReadOnlyList<PlacedLabel> placed;
    private readonly SKRect frame;

    public CusumLabels(CusumPicture picture, SKFont text, SKFont strong)
    {
        (this.picture, this.text, this.strong, events) = (picture, text, strong, Events(picture));
        placed = MarkStrip.Place([.. events.Select(e => (X(e.At), e.Label))], s => strong.MeasureText(s), 12, Ink.Width - 12);
        Top = 58 + ((placed.Count == 0 ? 0 : placed.Max(p => p.Row) + 1) * Ink.Row);
        frame = new SKRect(Ink.Left, Top, Ink.Width - Ink.Right, Height - Ink.Below);
    }

    /// <summary>Room above the frame [px].</summary>
    public float Top { get; }

    /// <summary>Restarts stand between two trials, an alarm at its own; places in trials, not hours.</summary>
    public static IReadOnlyList<DriftPlot.Event> Events(CusumPicture picture) =>
    [
        .. picture.Restarts.Select(r => new DriftPlot.Event(r.BeforeTrial - 0.5, r.Label, Ink.Of(r.Kind)))
            .Concat(picture.Points.Index().Where(p => p.Item.Alarm).Select(p => new DriftPlot.Event(p.Index, "drift alarm", Ink.Words)))
            .OrderBy(e => e.At),
    ];

    public void Draw(SKCanvas canvas)
    {
        void Write(string words, float x, float y, SKColor color, SKFont font, SKTextAlign align = SKTextAlign.Left)
        {
            using var paint = new SKPaint { Color = color, IsAntialias = true };
            canvas.DrawText(words, x, y, align, font, paint);
        }

        Write("what the trials add up to against the mean before them [standard deviations]", 12, 36, Ink.Quiet, text);
        foreach (var label in placed)
        {
            var y = frame.Top - 16 - (label.Row * Ink.Row);
            using var pole = new SKPaint { Color = events[label.Index].Color, StrokeWidth = 3 };
            canvas.DrawLine(label.X, frame.Top, label.X, y - 20, pole);
            Write(label.Text, label.Left, y, events[label.Index].Color, strong);
        }

        foreach (var side in new[] { picture.Limit, -picture.Limit })
            Write($"line at {picture.Limit:0.0}", frame.Right + 14, Y(side) + 11, Ink.Words, strong);
        // Where sums are large the two lines lie close together, and there is no room between them.
        if (Math.Abs(Y(0) - Y(picture.Limit)) >= 70)
        {
            Write("turns faster \u2191", frame.Right + 14, Y(0) - 22, Ink.Series, text);
            Write("turns slower \u2193", frame.Right + 14, Y(0) + 44, Ink.Series, text);
        }

        Trials(Write);
        Write("\u25CB first two of a stretch: nothing to hold them against", frame.Left, Height - 20, Ink.Quiet, text);
    }

    /// <summary>As many dates as stand side by side, the last always.</summary>
    private void Trials(Action<string, float, float, SKColor, SKFont, SKTextAlign> write)
    {
        var free = float.MaxValue;
        for (var i = picture.Points.Count - 1; i >= 0; i--)
        {
            var words = picture.Points[i].When;
            var half = text.MeasureText(words) / 2;
            if (X(i) + half + 18 > free || X(i) - half < 4) continue;
            write(words, X(i), frame.Bottom + 40, Ink.Quiet, text, SKTextAlign.Center);
            free = X(i) - half;
        }
    }

    private float X(double trial)
    {
        var (from, to) = CusumPlot.Span(picture);
        return Ink.Left + (float)((trial - from) / (to - from) * (Ink.Width - Ink.Left - Ink.Right));
    }

    private float Y(double sum)
    {
        var reach = CusumPlot.Reach(picture);
        return frame.Bottom - (float)((sum + reach) / (2 * reach) * frame.Height);
    }
}
