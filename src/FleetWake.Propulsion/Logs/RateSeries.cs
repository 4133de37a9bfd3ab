namespace FleetWake.Propulsion.Logs;

/// <summary>The engine rates of a log, ready to be searched.</summary>
internal sealed class RateSeries(IReadOnlyList<RateSample> samples)
{
    private readonly double[] _rpm = [.. samples.Select(sample => sample.Engine.RevolutionsPerMinute)];
    private readonly DateTimeOffset[] _at = [.. samples.Select(sample => sample.At)];

    internal int Count => samples.Count;

    internal IEnumerable<(DateTimeOffset From, DateTimeOffset To)> Steady(PlateauRules rules)
    {
        var searched = BySecond.Of(_at, _rpm);
        var at = searched.At;
        var seconds = Array.ConvertAll(at, time => (time - at[0]).TotalSeconds); // [s]
        var smooth = Sorted.RunningMedian(searched.Values[0]); // one wild reading ends no run
        return SteadyWindows
            .Find(seconds, rules.Shortest.TotalSeconds, Pace.LargestStep(at).TotalSeconds, new SteadyWindows.Series(smooth, high => rules.RpmRange * high))
            .Where(w => smooth[w.First] > 0) // an engine at rest is no run
            .Select(w => (at[w.First], at[w.Last]));
    }

    internal (double Mean, double? Scatter)? Over(DateTimeOffset from, DateTimeOffset to)
    {
        var (first, end) = Stretch.Of(_at, from, to);
        return end > first ? Sorted.Of(_rpm.AsSpan(first, end - first)) : null;
    }
}
