namespace FleetWake.Propulsion.Logs;

/// <summary>How often a log was written, and so what counts as a gap in it.</summary>
internal static class Pace
{
    /// <summary>
    /// The longest step between readings that is no gap: three usual steps, but 10 s at least, so that one lost reading of a
    /// fast log is none, and 60 s at most. Common practice, no source.
    /// </summary>
    internal static TimeSpan LargestStep(IReadOnlyList<DateTimeOffset> times)
    {
        if (times.Count < 2) return TimeSpan.FromSeconds(10);
        var steps = new double[times.Count - 1]; // [s]
        for (var i = 0; i < steps.Length; i++) steps[i] = (times[i + 1] - times[i]).TotalSeconds;
        return TimeSpan.FromSeconds(Math.Clamp(3 * Sorted.Median(steps), 10, 60));
    }
}
