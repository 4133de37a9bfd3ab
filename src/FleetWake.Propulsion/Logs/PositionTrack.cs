namespace FleetWake.Propulsion.Logs;

/// <summary>A point of a track.</summary>
/// <param name="At">When.</param>
/// <param name="Latitude">Latitude [degrees].</param>
/// <param name="Longitude">Longitude [degrees].</param>
/// <param name="MetresPerSecond">Speed as the receiver gave it [m/s]; null when it did not.</param>
/// <param name="CourseDegrees">Course as the receiver gave it [degrees]; null when it did not.</param>
/// <param name="Line">Where it stands.</param>
internal readonly record struct Position(
    DateTimeOffset At, double Latitude, double Longitude, double? MetresPerSecond, double? CourseDegrees, int Line);

/// <summary>
/// Makes speeds of positions where a receiver gave none. Each is a chord over several seconds: between neighbours a second
/// apart, a position rounded to a metre would scatter the speed by two knots. The mean over a run does not mind.
/// </summary>
internal sealed class PositionTrack(LogBuilder log)
{
    /// <summary>Half of the time that a chord spans at least, where points are as dense. Common practice, no source.</summary>
    private static readonly TimeSpan s_half = TimeSpan.FromSeconds(2);

    private readonly List<Position> _segment = [];
    private readonly List<Position[]> _segments = [];

    internal void Add(Position point) => _segment.Add(point);

    /// <summary>Nothing is joined over the end of a segment.</summary>
    internal void Break()
    {
        if (_segment.Count > 0) _segments.Add([.. _segment.OrderBy(point => point.At)]);
        _segment.Clear();
    }

    internal void End()
    {
        Break();
        var all = _segments.SelectMany(segment => segment).ToArray();
        // One kind of speed for the whole log: a receiver's own is filtered, that from positions is not.
        if (all.Length > 0 && all.Count(point => point.MetresPerSecond is not null) * 2 > all.Length) Own(all);
        else foreach (var segment in _segments) Chords(segment);
    }

    private void Own(Position[] points)
    {
        foreach (var p in points)
        {
            if (p.MetresPerSecond is { } v) log.Fix("", p.At, v * (3600.0 / 1852.0), p.CourseDegrees ?? Chord(points, p)?.Course, p.Line);
            else log.Drop(p.Line, "a point without the speed that the others have");
        }
    }

    private void Chords(Position[] points)
    {
        var largest = Pace.LargestStep([.. points.Select(point => point.At)]);
        for (var i = 0; i < points.Length; i++)
        {
            var (a, b) = Ends(points, i, largest);
            if (!(points[b].At > points[a].At)) continue; // alone, or between gaps
            var (metres, course) = NearbyPoints.Between(points[a].Latitude, points[a].Longitude, points[b].Latitude, points[b].Longitude);
            var v = metres / (points[b].At - points[a].At).TotalSeconds; // [m/s]
            log.Say(LogNoticeKind.SpeedFromPositions, "speed and course were made from positions");
            log.Fix("", points[i].At, v * (3600.0 / 1852.0), course, points[i].Line);
        }
    }

    private static (int A, int B) Ends(Position[] points, int i, TimeSpan largest)
    {
        var (a, b) = (i, i);
        while (a > 0 && points[a].At - points[a - 1].At <= largest && points[i].At - points[a].At < s_half) a--;
        while (b < points.Length - 1 && points[b + 1].At - points[b].At <= largest && points[b].At - points[i].At < s_half) b++;
        return (a, b);
    }

    /// <summary>The course to a point from the one before it, for a receiver that gives a speed and no course.</summary>
    private static (double Metres, double Course)? Chord(Position[] points, Position p)
    {
        var i = Array.BinarySearch(points, p, Comparer<Position>.Create((x, y) => x.At.CompareTo(y.At)));
        if (i < 1 || p.At - points[i - 1].At > TimeSpan.FromSeconds(60)) return null;
        var (metres, course) = NearbyPoints.Between(points[i - 1].Latitude, points[i - 1].Longitude, p.Latitude, p.Longitude);
        return metres > 1 ? (metres, course) : null; // standing still has no course
    }
}
