using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using static FleetWake.Web.Office.Charts.Plane;

namespace FleetWake.Web.Office.Charts;

/// <summary>
/// The drift picture laid out as a drawing: the same data and words as in a mail, another pen. It is laid out once for a wide
/// page and once for a narrow one, so that its letters are never small.
/// </summary>
/// <param name="Picture">The picture.</param>
/// <param name="Width">Width [px].</param>
/// <param name="Height">Height [px].</param>
/// <param name="Frame">The frame with its scales.</param>
/// <param name="Flags">Labels of what happened, above the frame.</param>
/// <param name="Events">What happened, from left to right.</param>
/// <param name="Sides">Labels at the right.</param>
public sealed record DriftChart(
    DriftPicture Picture, double Width, double Height, Plane Frame, IReadOnlyList<PlacedLabel> Flags, IReadOnlyList<ChartEvent> Events, IReadOnlyList<SideLabel> Sides)
{
    /// <summary>Size of its letters [px].</summary>
    public const double Text = 13;

    private const float Row = 18;

    /// <summary>Lays it out.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="narrow">For a narrow page.</param>
    public static DriftChart Of(DriftPicture picture, bool narrow)
    {
        var (width, height, left, right) = narrow ? (348.0, 360.0, 38.0, 96.0) : (760.0, 400.0, 46.0, 128.0);
        var w = picture.Window;
        var events = EventsOf(picture);
        var across = new Plane(left, 0, width - right, 1, w.FromHours, w.ToHours, 0, 1);
        var flags = MarkStrip.Place([.. events.Select(e => ((float)across.X(e.Hours), e.Label, e.Effect))], t => Wide(t, Text), (float)left, (float)width - 4);
        var rows = flags.Count == 0 ? 0 : flags.Max(f => f.Row) + 1;
        var frame = new Plane(left, 24 + (rows * Row), width - right, height - 48, w.FromHours, w.ToHours, w.FromRpm, w.ToRpm);
        return new DriftChart(picture, width, height, frame, flags, events, SidesOf(picture, frame));
    }

    /// <summary>Height of a row of flags above the frame [px].</summary>
    public double FlagY(PlacedLabel flag) => Frame.Top - 8 - (flag.Row * Row);

    private static List<ChartEvent> EventsOf(DriftPicture picture)
    {
        var events = picture.Marks.Select(m => new ChartEvent(m.Hours, m.Label, m.Effect, m.Kind switch { HistoryMarkKind.Strike => "strike", HistoryMarkKind.Repitch => "repitch", _ => "other" })).ToList();
        if (picture.Exit is { } exit && exit.Hours >= picture.Window.FromHours && exit.Hours <= picture.Window.ToHours)
            events.Add(new ChartEvent(exit.Hours, $"{(exit.Edge == BandEdge.Top ? "top" : "bottom")} about {exit.Hours:0} h", null, "exit"));
        if (picture.AlarmHours is { } alarm) events.Add(new ChartEvent(alarm, "drift alarm", null, "alarm"));
        return [.. events.OrderBy(e => e.Hours)];
    }

    private static IReadOnlyList<SideLabel> SidesOf(DriftPicture picture, Plane frame)
    {
        var wished = new List<SideLabel>();
        if (picture.Band is { } band)
        {
            wished.Add(new SideLabel((float)frame.InY(band.HighRpm), Edge("top", band.HighRpm, picture.Window), true, true));
            wished.Add(new SideLabel((float)frame.InY(band.LowRpm), Edge("bottom", band.LowRpm, picture.Window), true, true));
        }

        if (picture.BaselineRpm is { } baseline && baseline >= picture.Window.FromRpm && baseline <= picture.Window.ToRpm)
            wished.Add(new SideLabel((float)frame.InY(baseline), $"baseline {baseline:0}", false, false));
        if (picture.Points.LastOrDefault(p => p.Kind == PointKind.Counted) is { } last)
            wished.Add(new SideLabel((float)frame.InY(last.Rpm), $"last {last.Rpm:0}", true, false));
        return SideLabels.Spread(wished, Row - 2, (float)frame.Top + 4, (float)frame.Bottom - 4);
    }

    private static string Edge(string name, double rpm, PictureWindow w) => rpm > w.ToRpm ? $"{name} {rpm:0} ↑" : rpm < w.FromRpm ? $"{name} {rpm:0} ↓" : $"{name} {rpm:0}";
}

/// <summary>A line from top to bottom with a flag on it.</summary>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="Label">What happened.</param>
/// <param name="Effect">What it did to the RPM, where that is known.</param>
/// <param name="Kind">strike, repitch, exit, alarm or other: how it is drawn.</param>
public sealed record ChartEvent(double Hours, string Label, string? Effect, string Kind);
