namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Readings at most one a second, each the median of what was read in it. Without this a fast log would have shorter runs
/// than a slow one of the same trial, for more readings scatter more widely.
/// </summary>
internal sealed class BySecond
{
    private BySecond(DateTimeOffset[] at, double[][] values) => (At, Values) = (at, values);

    /// <summary>When each second's first reading was.</summary>
    internal DateTimeOffset[] At { get; }

    /// <summary>The medians, series by series.</summary>
    internal double[][] Values { get; }

    internal static BySecond Of(DateTimeOffset[] at, params double[][] series)
    {
        var first = new List<int>();
        for (var i = 0; i < at.Length; i++)
        {
            if (first.Count == 0 || at[i] - at[first[^1]] >= TimeSpan.FromSeconds(1)) first.Add(i);
        }

        return new BySecond(
            [.. first.Select(i => at[i])],
            [.. series.Select(values => first.Select((i, k) => Sorted.Median(values.AsSpan(i, (k + 1 < first.Count ? first[k + 1] : at.Length) - i))).ToArray())]);
    }
}
