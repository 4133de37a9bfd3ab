namespace FleetWake.Reports.Pictures;

/// <summary>A label in the strip above the frame.</summary>
/// <param name="Index">Which mark.</param>
/// <param name="X">Its line [px].</param>
/// <param name="Row">Row from the frame upwards, from 0; the mark's line is led up to it.</param>
/// <param name="Left">Left end [px].</param>
/// <param name="Right">Right end [px].</param>
/// <param name="Text">What it says.</param>
public sealed record PlacedLabel(int Index, float X, int Row, float Left, float Right, string Text);

/// <summary>Hangs the labels of marks like flags on their lines, so that none covers another or another's line.</summary>
public static class MarkStrip
{
    /// <summary>Rows of the strip at the most.</summary>
    public const int MostRows = 3;
    private const float Gap = 16;
    private const float Pole = 8;

    /// <summary>
    /// Goes from right to left: a flag to the right of its line then lies right of every line that must still be led
    /// up past it. What finds no room is counted in the label of a placed mark; it keeps its line, and the
    /// digest has it in words.
    /// </summary>
    /// <param name="marks">Position of the line [px] and label, from left to right.</param>
    /// <param name="width">Width of a text [px].</param>
    /// <param name="from">Left end of the strip [px].</param>
    /// <param name="to">Right end [px].</param>
    public static IReadOnlyList<PlacedLabel> Place(IReadOnlyList<(float X, string Label)> marks, Func<string, float> width, float from, float to)
    {
        // A flag to the left leaves those before it more room in the top row, but is farther from its line: only where that gains one.
        var (near, high) = (Place(marks, width, from, to, leftFromTop: false), (List<PlacedLabel>?)null);
        if (near.Count < marks.Count) high = Place(marks, width, from, to, leftFromTop: true);
        var placed = high?.Count > near.Count ? high : near;

        // Counted at the leftmost label with room for it.
        var crowded = marks.Count - placed.Count;
        var count = $" (+{crowded})";
        if (crowded == 0 || placed.FindIndex(p => Grows(p, width(count), placed, to)) is not (>= 0 and var at)) return placed;
        placed[at] = placed[at] with { Text = placed[at].Text + count, Right = placed[at].Right + width(count) };
        return placed;
    }

    private static List<PlacedLabel> Place(IReadOnlyList<(float X, string Label)> marks, Func<string, float> width, float from, float to, bool leftFromTop)
    {
        var placed = new List<PlacedLabel>();
        for (var i = marks.Count - 1; i >= 0; i--)
        {
            var x = marks[i].X;
            var text = Fitting.To(marks[i].Label, width, Math.Max(x - from, to - x) - Pole);
            var wide = width(text);
            var flag = Candidates(i, x, text, wide, leftFromTop).FirstOrDefault(c => c.Left >= from && c.Right <= to && placed.TrueForAll(p => Clear(c, p)));
            if (flag is not null) placed.Insert(0, flag);
        }

        return placed;
    }

    /// <summary>The same with what each mark did behind its label, or on a flag of its own below it, wherever that costs no other mark its label.</summary>
    /// <param name="marks">Position of the line [px], label, and what it did, from left to right.</param>
    /// <param name="width">Width of a text [px].</param>
    /// <param name="from">Left end of the strip [px].</param>
    /// <param name="to">Right end [px].</param>
    public static IReadOnlyList<PlacedLabel> Place(IReadOnlyList<(float X, string Label, string? More)> marks, Func<string, float> width, float from, float to)
    {
        List<(float X, string Label, int Mark)> flags = [.. marks.Select((m, i) => (m.X, m.Label, i))];
        var placed = Marked(flags, width, from, to);
        for (var i = 0; i < marks.Count; i++)
        {
            if (marks[i].More is not { } more) continue;
            var (at, longer) = (flags.FindIndex(f => f.Mark == i), $"{marks[i].Label}: {more}");
            List<(float X, string Label, int Mark)> behind = [.. flags], below = [.. flags];
            behind[at] = (marks[i].X, longer, i);
            below.Insert(at + 1, (marks[i].X, more, i));
            foreach (var (tried, text, extra) in new[] { (behind, longer, 0), (below, more, 1) })
            {
                var then = Marked(tried, width, from, to);
                if (then.Count < placed.Count + extra || !then.Any(p => p.Index == i && p.Text.StartsWith(text, StringComparison.Ordinal))) continue;
                (flags, placed) = (tried, then);
                break;
            }
        }

        return placed;
    }

    private static IReadOnlyList<PlacedLabel> Marked(List<(float X, string Label, int Mark)> flags, Func<string, float> width, float from, float to) =>
        [.. Place([.. flags.Select(f => (f.X, f.Label))], width, from, to).Select(p => p with { Index = flags[p.Index].Mark })];

    private static IEnumerable<PlacedLabel> Candidates(int index, float x, string text, float wide, bool leftFromTop)
    {
        // To the left only when no row has room to the right: a left flag bars the way up for the lines before it.
        for (var row = 0; row < MostRows; row++) yield return new PlacedLabel(index, x, row, x + Pole, x + Pole + wide, text);
        for (var row = 0; row < MostRows; row++) yield return new PlacedLabel(index, x, leftFromTop ? MostRows - 1 - row : row, x - Pole - wide, x - Pole, text);
    }

    private static bool Grows(PlacedLabel flag, float by, List<PlacedLabel> placed, float to)
    {
        var longer = flag with { Right = flag.Right + by };
        return longer.Left > longer.X && longer.Right <= to && placed.TrueForAll(p => p == flag || Clear(longer, p));
    }

    // Room in its row, its pole free of lower flags, and the poles of higher flags free of it.
    private static bool Clear(PlacedLabel flag, PlacedLabel other)
    {
        if (flag.Row == other.Row && flag.Left < other.Right + Gap && other.Left < flag.Right + Gap) return false;
        return !Crosses(flag, other) && !Crosses(other, flag);
    }

    private static bool Crosses(PlacedLabel led, PlacedLabel flag) => flag.Row < led.Row && led.X > flag.Left - 4 && led.X < flag.Right + 4;
}
