using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>A part of a picture by its hours, its RPM laid about what is in that part.</summary>
public static class PictureZoom
{
    /// <summary>The narrowest part [h]: below that a gauge's step and an hour meter's tenth are all there is to see.</summary>
    public const double LeastHours = 10;

    /// <summary>The part between two hours, widened where it is too narrow and kept within the picture; the picture itself where nothing is left out.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="from">Left [h]; null for the picture's own.</param>
    /// <param name="to">Right [h].</param>
    public static DriftPicture Of(DriftPicture picture, double? from, double? to)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var whole = picture.Window;
        var left = Math.Clamp(from ?? whole.FromHours, whole.FromHours, Math.Max(whole.FromHours, whole.ToHours - LeastHours));
        var right = Math.Clamp(to ?? whole.ToHours, Math.Min(whole.ToHours, left + LeastHours), whole.ToHours);
        if (left <= whole.FromHours && right >= whole.ToHours) return picture;

        var points = picture.Points.Where(p => p.Hours >= left && p.Hours <= right).ToList();
        var marks = picture.Marks.Where(m => m.Hours >= left && m.Hours <= right).ToList();
        var line = picture.Line is null ? null : Between(picture.Line, left, right);
        var rpm = points.Count > 0 || line is { Points.Count: > 0 }
            ? Windows.Rpm(points, picture.Band, null, line, right)
            : (whole.FromRpm, whole.ToRpm);
        return picture with
        {
            Window = new PictureWindow(left, right, rpm.Item1, rpm.Item2),
            Points = points,
            Marks = marks,
            Line = line,
            Exit = picture.Exit is { } exit && exit.EarliestHours <= right && (exit.LatestHours ?? whole.ToHours) >= left ? exit with { EarliestHours = Math.Max(left, exit.EarliestHours) } : null,
            AlarmHours = picture.AlarmHours >= left && picture.AlarmHours <= right ? picture.AlarmHours : null,
        };
    }

    private static DriftLine Between(DriftLine line, double from, double to)
    {
        var cut = Windows.Cut(line, to);
        var at = cut.Points.Index().LastOrDefault(p => p.Item.Hours <= from).Index;
        if (cut.Points.Count == 0 || cut.Points[^1].Hours < from) return line with { Points = [] };
        var points = cut.Points.Skip(at).ToList();
        if (points.Count > 1 && points[0].Hours < from) points[0] = Windows.Between(points[0], points[1], from);
        return line with { Points = points };
    }
}
