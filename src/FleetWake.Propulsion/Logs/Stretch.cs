namespace FleetWake.Propulsion.Logs;

/// <summary>Which of a row of times lie within a stretch.</summary>
internal static class Stretch
{
    /// <summary>The first index in it, and the one after the last.</summary>
    internal static (int First, int End) Of(DateTimeOffset[] at, DateTimeOffset from, DateTimeOffset to)
    {
        var first = Before(at, from, orAt: false);
        return (first, Math.Max(first, Before(at, to, orAt: true)));
    }

    private static int Before(DateTimeOffset[] at, DateTimeOffset time, bool orAt)
    {
        var (low, high) = (0, at.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (at[middle] < time || (orAt && at[middle] == time)) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
