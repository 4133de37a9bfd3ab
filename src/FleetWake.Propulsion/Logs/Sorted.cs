namespace FleetWake.Propulsion.Logs;

/// <summary>Figures of scattered readings that one wild reading does not move.</summary>
internal static class Sorted
{
    internal static double Median(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /// <summary>The median of each value with its neighbours, up to two on either side.</summary>
    internal static double[] RunningMedian(ReadOnlySpan<double> values)
    {
        var smooth = new double[values.Length];
        for (var i = 0; i < smooth.Length; i++)
        {
            var reach = Math.Min(2, Math.Min(i, smooth.Length - 1 - i)); // as many on one side as on the other: a slope keeps its place
            smooth[i] = Median(values.Slice(i - reach, (2 * reach) + 1));
        }

        return smooth;
    }

    /// <summary>
    /// Mean and standard deviation of the values, less those further from the median than four times what the median
    /// absolute deviation stands for (1.4826 MAD = sd of a normal scatter; Hampel 1974, from memory).
    /// </summary>
    internal static (double Mean, double? Scatter) Of(ReadOnlySpan<double> values)
    {
        var median = Median(values);
        var apart = new double[values.Length];
        for (var i = 0; i < apart.Length; i++) apart[i] = Math.Abs(values[i] - median);
        var limit = 4 * 1.4826 * Median(apart);
        var (sum, squares, count) = (0.0, 0.0, 0);
        for (var i = 0; i < apart.Length; i++)
        {
            // A display that hardly moves has a MAD of zero; then nothing is called wild.
            if (limit > 0 && apart[i] > limit) continue;
            var d = values[i] - median; // about the median, so that no digits cancel
            sum += d;
            squares += d * d;
            count++;
        }

        var mean = sum / count;
        double? scatter = count < 2 ? null : Math.Sqrt(Math.Max(0, (squares - (count * mean * mean)) / (count - 1)));
        return (median + mean, scatter);
    }
}
