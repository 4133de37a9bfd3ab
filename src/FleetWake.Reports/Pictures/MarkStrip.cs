namespace FleetWake.Reports.Pictures;

/// <summary>A label in the strip above the frame.</summary>
/// <param name="Index">Which mark.</param>
/// <param name="Row">Row from the frame upwards, from 0.</param>
/// <param name="Left">Left end [px].</param>
/// <param name="Text">What it says.</param>
internal sealed record PlacedLabel(int Index, int Row, float Left, string Text);

/// <summary>Puts the labels of marks above their lines so that none covers another.</summary>
internal static class MarkStrip
{
    public const int MostRows = 3;
    private const float Gap = 18;

    /// <summary>
    /// Places each label centred on its line in the lowest row with room. What finds no room in the last row joins
    /// the label before it as a count: a mark without a label still has its line, and the text of the digest has it in words.
    /// </summary>
    /// <param name="marks">Position of the line [px] and label, from left to right.</param>
    /// <param name="width">Width of a text [px].</param>
    /// <param name="from">Left end of the strip [px].</param>
    /// <param name="to">Right end [px].</param>
    public static IReadOnlyList<PlacedLabel> Place(IReadOnlyList<(float X, string Label)> marks, Func<string, float> width, float from, float to)
    {
        var placed = new List<PlacedLabel>();
        var ends = Enumerable.Repeat(float.MinValue, MostRows).ToArray();
        var crowded = 0;
        for (var i = 0; i < marks.Count; i++)
        {
            var text = Shorten(marks[i].Label, width, to - from);
            var wide = width(text);
            var left = Math.Clamp(marks[i].X - (wide / 2), from, Math.Max(from, to - wide));
            var row = Array.FindIndex(ends, end => left >= end + Gap);
            if (row < 0)
            {
                crowded++;
                continue;
            }

            ends[row] = left + wide;
            placed.Add(new PlacedLabel(i, row, left, text));
        }

        if (crowded > 0 && placed.Count > 0)
        {
            var last = placed[^1];
            var text = $"{last.Text} (+{crowded})";
            placed[^1] = last with { Text = text, Left = Math.Clamp(last.Left, from, Math.Max(from, to - width(text))) };
        }

        return placed;
    }

    private static string Shorten(string text, Func<string, float> width, float room)
    {
        if (width(text) <= room) return text;
        var keep = text.Length;
        while (keep > 1 && width(text[..keep] + "…") > room) keep--;
        return text[..keep] + "…";
    }
}
