using SkiaSharp;

namespace FleetWake.Reports.Pictures.Fleet;

/// <summary>
/// Draws the strip: columns of marks over the rated band, piled up where many stand alike. The piles are laid out by us, for
/// an edge of the band must fall between two columns and never within one.
/// </summary>
internal sealed class FleetStripPlot
{
    private const int Height = 560;
    private const float Side = 30;
    private const float Beyond = 0.28f; // of the band, on either side; what lies farther is pinned to the end
    private const int MostFlags = 12;
    private const float LeastOfNote = 15;
    private static readonly float[] s_sizes = [26, 22, 18, 15, 12, 10, 8, 6.5f, 5];

    private readonly FleetStrip strip;
    private readonly Pens pens;
    private readonly IReadOnlyList<PlacedLabel> flags;
    private readonly List<Placed> marks;
    private readonly List<Placed> flagged;
    private readonly SKRect frame;
    private readonly float left; // of the band [px]
    private readonly float right;
    private readonly float size;

    private FleetStripPlot(FleetStrip strip, Pens pens)
    {
        (this.strip, this.pens) = (strip, pens);
        var unit = (Ink.Width - (2 * Side)) / (1 + (2 * Beyond));
        (left, right) = (Side + (unit * Beyond), Side + (unit * (1 + Beyond)));
        var tallest = Height - 118 - (58 + (MarkStrip.MostRows * Ink.Row)) - 10;
        (size, marks) = s_sizes.Select(s => (Size: s, Marks: Pile(s, tallest))).First(p => p.Size == s_sizes[^1] || p.Marks.All(m => m.Up <= tallest - p.Size));
        flagged = [.. marks.Where(m => m.Mark.State != StripState.Inside || strip.Marks.Count <= MostFlags)
            .OrderByDescending(m => m.Mark.State is StripState.Above or StripState.Below).ThenByDescending(m => m.Mark.BeyondRpm).Take(MostFlags).OrderBy(m => m.X)];
        flags = MarkStrip.Place([.. flagged.Select(m => (m.X, Fitting.Name(m.Mark.Name)))], s => pens.Strong.MeasureText(s), 12, Ink.Width - 12);
        var rows = flags.Count == 0 ? 0 : flags.Max(f => f.Row) + 1;
        frame = new SKRect(Side, 58 + (rows * Ink.Row), Ink.Width - Side, Height - 118);
    }

    public static Sheet Sheet(FleetStrip strip, Pens pens) => new(null, Height, new FleetStripPlot(strip, pens).Draw);

    private static Sign Of(StripState state) => state switch
    {
        StripState.Above => Sign.Above,
        StripState.Below => Sign.Below,
        StripState.Leaving => Sign.Leaving,
        _ => Sign.Inside,
    };

    /// <summary>Columns that divide the band evenly; what needs somebody lies at the foot of its pile.</summary>
    private List<Placed> Pile(float mark, float tallest)
    {
        var columns = Math.Max(1, (int)((right - left) / (mark + 2)));
        var wide = (right - left) / columns;
        var outer = (int)Math.Floor((left - Side) / wide);
        var piles = strip.Marks.GroupBy(m => Column(m, columns, outer)).ToList();
        var step = Math.Min(mark + 2, (tallest - mark) / Math.Max(1, piles.Max(p => p.Count()) - 1));
        if (mark > s_sizes[^1]) step = mark + 2; // only the smallest marks may overlap
        return
        [
            .. piles.SelectMany(pile => pile.OrderBy(m => m.State == StripState.Inside).ThenByDescending(m => m.BeyondRpm)
                .Select((m, i) => new Placed(m, left + ((pile.Key + 0.5f) * wide), i * step))),
        ];
    }

    private static int Column(StripMark mark, int columns, int outer) => mark.State switch
    {
        StripState.Above => columns + Math.Clamp((int)((mark.Place - 1) * columns), 0, outer - 1),
        StripState.Below => -1 - Math.Clamp((int)(-mark.Place * columns), 0, outer - 1),
        _ => Math.Clamp((int)(mark.Place * columns), 0, columns - 1),
    };

    private void Draw(SKCanvas canvas)
    {
        var brush = new Brush(canvas, pens);
        var few = strip.Marks.Count(m => m.State != StripState.Inside) <= 60;
        brush.Write("one mark an engine, at its place in its own rated band", 12, 36, Ink.Quiet);
        if (strip.NotKnown > 0) brush.Write($"{strip.NotKnown} not known", Ink.Width - Side, 36, Ink.Quiet, false, SKTextAlign.Right);
        brush.Fill(new SKRect(left, frame.Top, right, frame.Bottom), SKColor.Parse("#2A9D8F").WithAlpha(38));
        foreach (var x in new[] { left, right }) brush.Line(x, frame.Top, x, frame.Bottom, Ink.BandWords, 3);
        brush.Line(frame.Left, frame.Bottom, frame.Right, frame.Bottom, SKColor.Parse("#9AA5B1"), 2);
        foreach (var flag in flags)
        {
            var at = flagged[flag.Index];
            var color = SKColor.Parse(Of(at.Mark.State).Hex);
            var y = frame.Top - 16 - (flag.Row * Ink.Row);
            brush.Line(flag.X, frame.Bottom - 6 - at.Up - size, flag.X, y - 20, color, 2.5f, [3, 6]);
            brush.Write(flag.Text, flag.Left, y, color, strong: true);
        }

        // Where marks are small those that need somebody are drawn larger, and last: they are few, or nothing is.
        foreach (var m in marks.OrderBy(m => m.Mark.State != StripState.Inside))
        {
            var large = few && m.Mark.State != StripState.Inside ? Math.Max(size, LeastOfNote) : size;
            brush.Mark(Of(m.Mark.State), m.X, frame.Bottom - 8 - (size / 2) - m.Up - ((large - size) / 2), large, large > 10 ? 2 : 0);
        }

        var under = frame.Bottom + 38;
        brush.Write("bottom", left, under, Ink.BandWords, true, SKTextAlign.Center);
        brush.Write("rated band", (left + right) / 2, under, Ink.BandWords, false, SKTextAlign.Center);
        brush.Write("top", right, under, Ink.BandWords, true, SKTextAlign.Center);
        Key(brush, Height - 22);
    }

    private void Key(Brush brush, float y)
    {
        var x = Side;
        foreach (var (state, words) in new[] { (StripState.Above, "above the top"), (StripState.Below, "below the bottom"), (StripState.Leaving, "leaving within 100 h"), (StripState.Inside, "inside") })
        {
            if (state != StripState.Inside && strip.Marks.All(m => m.State != state)) continue;
            var text = $"{strip.Marks.Count(m => m.State == state)} {words}";
            brush.Mark(Of(state), x + 12, y - 10, 24, 0);
            brush.Write(text, x + 32, y, Ink.Words);
            x += 32 + brush.Width(text) + 26;
        }

    }

    /// <summary>A mark in its place: its middle, and how far its foot stands over the ground [px].</summary>
    private sealed record Placed(StripMark Mark, float X, float Up);
}
