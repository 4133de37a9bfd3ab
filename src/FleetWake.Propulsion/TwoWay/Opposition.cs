namespace FleetWake.Propulsion;

/// <summary>Which runs went out and which came back, how exactly they oppose each other, and what each counts in a mean.</summary>
/// <remarks>Works in memory that its caller lends, so that a mean allocates nothing but its result.</remarks>
internal readonly ref struct Opposition
{
    private readonly ReadOnlySpan<bool> _out;
    private readonly ReadOnlySpan<double> _weights;

    /// <summary>Weighs runs in the order in which they were made.</summary>
    /// <param name="headings">Their headings [degrees], one or more, finite.</param>
    /// <param name="isOut">Room for as many.</param>
    /// <param name="weights">Room for as many.</param>
    internal Opposition(ReadOnlySpan<double> headings, Span<bool> isOut, Span<double> weights)
    {
        // The first run says which way is out. If the runs can be parted at all into two groups whose every pair
        // opposes within 30 degrees, then the others of its group lie within 60 degrees of it and the rest beyond
        // 150, so a parting at 90 finds those groups.
        for (var i = 0; i < headings.Length; i++)
            isOut[i] = Apart(headings[0], headings[i]) < 90;

        _out = isOut;
        LargestErrorDegrees = headings.Length == 1 ? null : LargestError(headings, isOut);
        Method = HowWeighed(isOut, LargestErrorDegrees);
        TwoWayWeights.Fill(Method, isOut, weights);
        _weights = weights;
    }

    /// <summary>Largest departure from exact opposition [degrees], 0 to 180; null for a single run.</summary>
    internal double? LargestErrorDegrees { get; }

    internal MeanSpeedMethod Method { get; }

    internal bool RemovesCurrent => Method is not (MeanSpeedMethod.SingleRun or MeanSpeedMethod.HeadingsNotOpposed);

    /// <summary>Runs less the headings whose means their scatter is taken about.</summary>
    internal int DegreesOfFreedom => _out.Length - (_out.Contains(false) ? 2 : 1);

    /// <summary>Sum of the squared weights [1]: what the variance of one run counts in the variance of the mean.</summary>
    internal double SumOfSquaredWeights
    {
        get
        {
            var sum = 0.0;
            foreach (var w in _weights)
                sum += w * w;
            return sum;
        }
    }

    internal double Weight(int run) => _weights[run];

    internal double Mean(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        for (var i = 0; i < values.Length; i++)
            sum += _weights[i] * values[i];
        return sum;
    }

    /// <summary>Sum of the squares of values about the means of their own headings.</summary>
    internal double Scatter(ReadOnlySpan<double> values)
    {
        var (there, back) = (MeanOf(values, isOut: true), MeanOf(values, isOut: false));
        var sum = 0.0;
        for (var i = 0; i < values.Length; i++)
        {
            var off = values[i] - (_out[i] ? there : back);
            sum += off * off;
        }

        return sum;
    }

    /// <summary>How far the means of the two headings lie apart; 0 when all runs went one way.</summary>
    internal double Split(ReadOnlySpan<double> values) =>
        _out.Contains(false) ? Math.Abs(MeanOf(values, isOut: true) - MeanOf(values, isOut: false)) : 0;

    private double MeanOf(ReadOnlySpan<double> values, bool isOut)
    {
        var (sum, count) = (0.0, 0);
        for (var i = 0; i < values.Length; i++)
            if (_out[i] == isOut)
                (sum, count) = (sum + values[i], count + 1);
        return count == 0 ? 0 : sum / count;
    }

    private static MeanSpeedMethod HowWeighed(ReadOnlySpan<bool> isOut, double? largestErrorDegrees)
    {
        if (largestErrorDegrees is not { } error)
            return MeanSpeedMethod.SingleRun;
        if (!isOut.Contains(false) || error > TwoWayMean.ToleranceDegrees)
            return MeanSpeedMethod.HeadingsNotOpposed;
        for (var i = 0; i < isOut.Length; i++)
            if (isOut[i] != (i % 2 == 0))
                return MeanSpeedMethod.MeanOfHeadings;
        return isOut.Length switch
        {
            2 => MeanSpeedMethod.DoubleRun,
            3 => MeanSpeedMethod.ThreeRuns,
            4 => MeanSpeedMethod.FourRuns,
            _ => MeanSpeedMethod.MeanOfHeadings,
        };
    }

    /// <summary>Over every pair of a run out and a run back; when all went one way, over runs made after each other.</summary>
    private static double LargestError(ReadOnlySpan<double> headings, ReadOnlySpan<bool> isOut)
    {
        var largest = 0.0;
        var bothWays = isOut.Contains(false);
        for (var i = 0; i < headings.Length; i++)
            for (var j = 0; j < headings.Length; j++)
                if (bothWays ? isOut[i] && !isOut[j] : j == i + 1)
                    largest = Math.Max(largest, 180 - Apart(headings[i], headings[j]));
        return largest;
    }

    /// <summary>The angle between two headings [degrees], 0 to 180.</summary>
    private static double Apart(double a, double b)
    {
        // Each is brought near zero first: a difference of two large numbers may not be finite.
        var turn = Math.Abs(Math.IEEERemainder(a, 360) - Math.IEEERemainder(b, 360));
        return Math.Min(turn, 360 - turn);
    }
}
