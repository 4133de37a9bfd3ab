namespace FleetWake.Web.Office.Charts;

/// <summary>Values over engine hours, each with its doubt where that is known.</summary>
/// <param name="Title">What the values are.</param>
/// <param name="Unit">Their unit.</param>
/// <param name="Sentence">The chart in a sentence.</param>
/// <param name="Points">The values, in order of hours.</param>
/// <param name="From">Bottom.</param>
/// <param name="To">Top.</param>
public sealed record SmallChart(string Title, string Unit, string Sentence, IReadOnlyList<SmallPoint> Points, double From, double To)
{
    /// <summary>Width [px].</summary>
    public const double Width = 348;

    /// <summary>Height [px].</summary>
    public const double Height = 190;

    /// <summary>The frame with its scales.</summary>
    public Plane Frame()
    {
        var (from, to) = (Points.Min(p => p.Hours), Points.Max(p => p.Hours));
        var room = Math.Max(1, 0.05 * (to - from));
        return new Plane(38, 26, Width - 10, Height - 40, Math.Max(0, from - room), to + room, From, To);
    }
}

/// <summary>A value.</summary>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="Value">The value.</param>
/// <param name="Half">One standard deviation; null where it is not known.</param>
/// <param name="Counts">Whether its trial counts.</param>
public sealed record SmallPoint(double Hours, double Value, double? Half, bool Counts);
