namespace FleetWake.Reports.Pictures;

/// <summary>A label at the right of the frame.</summary>
/// <param name="Y">Wished height of its middle [px].</param>
/// <param name="Text">What it says.</param>
/// <param name="Strong">In semi-bold.</param>
/// <param name="OfBand">Names an edge of the band.</param>
public sealed record SideLabel(float Y, string Text, bool Strong, bool OfBand);

/// <summary>Spreads labels at the right so that none covers another and none leaves the frame.</summary>
public static class SideLabels
{
    /// <summary>Moves each as little as that takes.</summary>
    /// <param name="wished">The labels where they would like to be.</param>
    /// <param name="gap">Room that each takes [px].</param>
    /// <param name="top">Highest middle [px].</param>
    /// <param name="bottom">Lowest middle [px].</param>
    public static IReadOnlyList<SideLabel> Spread(IEnumerable<SideLabel> wished, float gap, float top, float bottom)
    {
        var labels = wished.OrderBy(l => l.Y).ToList();
        for (var i = 0; i < labels.Count; i++)
        {
            var least = i == 0 ? top : labels[i - 1].Y + gap;
            if (labels[i].Y < least) labels[i] = labels[i] with { Y = least };
        }

        for (var i = labels.Count - 1; i >= 0; i--)
        {
            var most = i == labels.Count - 1 ? bottom : labels[i + 1].Y - gap;
            if (labels[i].Y > most) labels[i] = labels[i] with { Y = most };
        }

        return labels;
    }
}
