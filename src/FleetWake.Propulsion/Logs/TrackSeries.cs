namespace FleetWake.Propulsion.Logs;

/// <summary>The speeds and courses of a log, ready to be searched.</summary>
internal sealed class TrackSeries
{
    /// <summary>A speed has settled when it is this close to what it comes to [1]. Common practice, no source.</summary>
    private const double Settled = 0.01;

    private readonly double[] _knots;
    private readonly double?[] _course;
    private readonly DateTimeOffset[] _at;
    private readonly BySecond _searched;
    private readonly TimeSpan _largestStep;

    internal TrackSeries(IReadOnlyList<TrackSample> samples)
    {
        _knots = [.. samples.Select(sample => sample.Speed.Knots)];
        _course = [.. samples.Select(sample => sample.CourseDegrees)];
        _at = [.. samples.Select(sample => sample.At)];
        var unwound = new double[_course.Length];
        // North is no edge: each course is written as the last one plus the turn. Where none was logged it is taken to hold.
        var last = _course.FirstOrDefault(course => course is not null) ?? 0;
        for (var i = 0; i < unwound.Length; i++)
        {
            if (_course[i] is { } c) last += Turn.Between(last, c);
            unwound[i] = last;
        }

        _searched = BySecond.Of(_at, _knots, unwound);
        _largestStep = Pace.LargestStep(_searched.At);
    }

    internal int Count => _knots.Length;

    /// <summary>The stretches in which speed and course hold, each from where the speed had settled.</summary>
    internal IEnumerable<(DateTimeOffset From, DateTimeOffset To)> Steady(DateTimeOffset from, DateTimeOffset to, PlateauRules rules)
    {
        var at = _searched.At;
        var (first, end) = Stretch.Of(at, from, to);
        var seconds = new double[end - first]; // [s]
        for (var i = 0; i < seconds.Length; i++) seconds[i] = (at[first + i] - at[first]).TotalSeconds;
        var smooth = Sorted.RunningMedian(_searched.Values[0].AsSpan(first, end - first));
        var turned = Sorted.RunningMedian(_searched.Values[1].AsSpan(first, end - first));
        var windows = SteadyWindows.Find(
            seconds, rules.Shortest.TotalSeconds, _largestStep.TotalSeconds,
            new SteadyWindows.Series(smooth, high => Math.Max(rules.SpeedRange * high, rules.SpeedRangeFloorKnots)),
            new SteadyWindows.Series(turned, _ => rules.CourseRangeDegrees));
        foreach (var w in windows)
        {
            var start = w.First + SettledAfter(smooth.AsSpan(w.First, w.Last - w.First + 1));
            // A boat that drifts holds its speed too; under two knots nothing is a run.
            if (seconds[w.Last] - seconds[start] < rules.Shortest.TotalSeconds || smooth[w.Last] < 2) continue;
            yield return (at[first + start], at[first + w.Last]);
        }
    }

    internal ((double Mean, double? Scatter)? Knots, double? Course) Over(DateTimeOffset from, DateTimeOffset to)
    {
        var (first, end) = Stretch.Of(_at, from, to);
        if (end == first) return (null, null);
        var courses = _course[first..end].Where(course => course is not null).Select(course => course!.Value).ToArray();
        return (Sorted.Of(_knots.AsSpan(first, end - first)), courses.Length > 0 ? Turn.Mean(courses) : null);
    }

    /// <summary>How many readings to let go until the speed is what it comes to: the median of the later half.</summary>
    private static int SettledAfter(ReadOnlySpan<double> knots)
    {
        var end = Sorted.Median(knots[(knots.Length / 2)..]);
        var i = 0;
        while (i < knots.Length / 2 && Math.Abs(knots[i] - end) > Settled * end) i++;
        return i;
    }
}
