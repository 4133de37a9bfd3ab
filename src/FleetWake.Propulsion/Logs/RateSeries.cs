namespace FleetWake.Propulsion.Logs;

/// <summary>The engine rates of a log, ready to be searched.</summary>
internal sealed class RateSeries(IReadOnlyList<RateSample> samples)
{
    private readonly double[] _rpm = [.. samples.Select(sample => sample.Engine.RevolutionsPerMinute)];
    private readonly DateTimeOffset[] _at = [.. samples.Select(sample => sample.At)];

    internal int Count => samples.Count;

    internal IEnumerable<(DateTimeOffset From, DateTimeOffset To)> Steady(PlateauRules rules)
    {
        var start = Count > 0 ? _at[0] : default;
        var seconds = Array.ConvertAll(_at, at => (at - start).TotalSeconds); // [s]
        var smooth = Sorted.RunningMedian(_rpm); // one wild reading ends no run
        return SteadyWindows
            .Find(seconds, rules.Shortest.TotalSeconds, Pace.LargestStep(_at).TotalSeconds, new SteadyWindows.Series(smooth, high => rules.RpmRange * high))
            .Where(w => smooth[w.First] > 0) // an engine at rest is no run
            .Select(w => (_at[w.First], _at[w.Last]));
    }

    internal (double Mean, double? Scatter)? Over(DateTimeOffset from, DateTimeOffset to)
    {
        var (first, end) = Stretch.Of(_at, from, to);
        return end > first ? Sorted.Of(_rpm.AsSpan(first, end - first)) : null;
    }
}
