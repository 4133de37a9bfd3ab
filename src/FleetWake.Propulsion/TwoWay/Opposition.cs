namespace FleetWake.Propulsion;

/// <summary>Which runs went out and which came back, and how exactly they oppose each other.</summary>
internal sealed class Opposition
{
    private readonly bool[] _out;

    internal Opposition(IReadOnlyList<TimedRun> runs)
    {
        // The first run says which way is out. If the runs can be parted at all into two groups whose every pair
        // opposes within 30 degrees, then the others of its group lie within 60 degrees of it and the rest beyond
        // 150, so a parting at 90 finds those groups.
        _out = [.. runs.Select(run => Apart(runs[0], run) < 90)];
        LargestErrorDegrees = Pairs(runs.Count).Select(p => 180 - Apart(runs[p.I], runs[p.J])).Max();
    }

    /// <summary>Largest departure from exact opposition [degrees], 0 to 180.</summary>
    internal double LargestErrorDegrees { get; }

    internal bool BothWays => _out.Contains(false);

    internal bool Alternates => _out.Select((isOut, i) => isOut == (i % 2 == 0)).All(fits => fits);

    /// <summary>Weights of the mean of the two headings' means; they sum to one.</summary>
    internal double[] MeanOfHeadingsWeights()
    {
        var nOut = _out.Count(isOut => isOut);
        var nBack = _out.Length - nOut;
        return [.. _out.Select(isOut => 0.5 / (isOut ? nOut : nBack))];
    }

    /// <summary>Standard error [kn] of a weighted mean, from the scatter within each heading; null without a repeat.</summary>
    internal double? StandardErrorKnots(double[] speeds, double[] weights)
    {
        var nu = speeds.Length - 2; // degrees of freedom: runs less two heading means
        if (nu < 1)
            return null;

        var Q = ScatterAbout(speeds, isOut: true) + ScatterAbout(speeds, isOut: false); // [kn2]
        return Math.Sqrt(Q / nu * weights.Sum(w => w * w));
    }

    private double ScatterAbout(double[] speeds, bool isOut)
    {
        var own = speeds.Where((_, i) => _out[i] == isOut).ToArray();
        var mean = own.Average();
        return own.Sum(v => (v - mean) * (v - mean));
    }

    private IEnumerable<(int I, int J)> Pairs(int count) => BothWays
        ? from i in Enumerable.Range(0, count)
          from j in Enumerable.Range(0, count)
          where _out[i] && !_out[j]
          select (i, j)
        : Enumerable.Range(1, count - 1).Select(i => (i - 1, i));

    /// <summary>The angle between two headings [degrees], 0 to 180.</summary>
    private static double Apart(TimedRun a, TimedRun b)
    {
        // Each is brought near zero first: a difference of two large numbers may not be finite.
        var turn = Math.Abs(Math.IEEERemainder(a.HeadingDegrees, 360) - Math.IEEERemainder(b.HeadingDegrees, 360));
        return Math.Min(turn, 360 - turn);
    }
}
