using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>What part of hours and RPM a picture shows.</summary>
internal static class Windows
{
    /// <summary>Less than this is never shown [RPM]: a gauge's scatter must not look like a cliff.</summary>
    private const double LeastSpanRpm = 300;

    /// <summary>The far edge of the band is shown when that stretches the picture by no more than this factor.</summary>
    private const double FarEdgeStretch = 1.6;

    public static PictureWindow Of(
        IReadOnlyList<PicturePoint> points, RatedBand? band, double? baselineRpm, DriftLine? line, IReadOnlyList<PictureMark> marks, PictureExit? exit)
    {
        var (fromHours, toHours) = Hours(points, line, marks, exit);
        var (fromRpm, toRpm) = Rpm(points, band, baselineRpm, line, toHours);
        return new PictureWindow(fromHours, toHours, fromRpm, toRpm);
    }

    /// <summary>The line up to an hour, its last sample put on that hour.</summary>
    public static DriftLine Cut(DriftLine line, double toHours)
    {
        var inside = line.Points.TakeWhile(p => p.Hours <= toHours).ToList();
        if (inside.Count > 0 && inside.Count < line.Points.Count && inside[^1].Hours < toHours)
            inside.Add(Between(inside[^1], line.Points[inside.Count], toHours));
        return line with { Points = inside };
    }

    private static (double From, double To) Hours(
        IReadOnlyList<PicturePoint> points, DriftLine? line, IReadOnlyList<PictureMark> marks, PictureExit? exit)
    {
        var from = Math.Min(points.Min(p => p.Hours), marks.Count > 0 ? marks[0].Hours : double.MaxValue);
        var to = Math.Max(points.Max(p => p.Hours), marks.Count > 0 ? marks[^1].Hours : double.MinValue);
        var seen = Math.Max(to - from, 20);

        // A forecast may not push what was measured into a corner: at most as much again as was seen.
        if (exit is not null)
            to = Math.Max(to, Math.Min((exit.LatestHours ?? exit.Hours * 1.1) + (0.04 * seen), to + seen));
        else if (line is { Points.Count: > 0 })
            to = Math.Max(to, Math.Min(line.Points[^1].Hours, to + (0.35 * seen)));
        var room = 0.03 * Math.Max(to - from, 20);
        return (Math.Max(0, from - room), to + room);
    }

    internal static (double From, double To) Rpm(IReadOnlyList<PicturePoint> points, RatedBand? band, double? baselineRpm, DriftLine? line, double toHours)
    {
        // Part throttle reads thousands lower and would flatten the rest: it is pinned to the frame instead.
        var full = points.Where(p => p.Kind != PointKind.SetAside).Select(p => p.Rpm).ToList();
        var values = full.Count > 0 ? full : points.Select(p => p.Rpm).ToList();
        if (baselineRpm is { } baseline) values.Add(baseline);
        if (line is not null)
        {
            foreach (var p in line.Points.TakeWhile(p => p.Hours <= toHours))
            {
                values.Add(p.Rpm);
                if (!p.Forecast) values.AddRange([p.LowRpm, p.HighRpm]);
            }
        }

        if (values.Count == 0) values.AddRange(band is null ? [0, LeastSpanRpm] : [band.LowRpm, band.HighRpm]);
        var (low, high) = (values.Min(), values.Max());
        if (band is not null)
        {
            var middle = (low + high) / 2;
            var (near, far) = Math.Abs(band.HighRpm - middle) < Math.Abs(band.LowRpm - middle) ? (band.HighRpm, band.LowRpm) : (band.LowRpm, band.HighRpm);
            (low, high) = (Math.Min(low, near), Math.Max(high, near));
            var (wideLow, wideHigh) = (Math.Min(low, far), Math.Max(high, far));
            if (wideHigh - wideLow <= FarEdgeStretch * Math.Max(high - low, LeastSpanRpm)) (low, high) = (wideLow, wideHigh);
        }

        var missing = Math.Max(0, LeastSpanRpm - (high - low)) / 2;
        var room = (0.1 * (high - low)) + missing;
        return (low - room, high + room);
    }

    internal static DriftPoint Between(DriftPoint a, DriftPoint b, double hours)
    {
        var t = (hours - a.Hours) / (b.Hours - a.Hours);
        double Mix(double x, double y) => x + (t * (y - x));
        return new DriftPoint(hours, Mix(a.Rpm, b.Rpm), Mix(a.LowRpm, b.LowRpm), Mix(a.HighRpm, b.HighRpm), b.Forecast);
    }
}
