namespace FleetWake.Propulsion;

/// <summary>
/// Takes the current out of speed runs made on two opposed headings. Speeds are averaged, never times: total distance
/// over total time is the harmonic mean, which is too slow wherever there is a current.
/// </summary>
/// <remarks>
/// The weights are those of the "mean of means" in ITTC 7.5-04-01-01.1 (2017) and ISO 15016:2015 (weights from memory,
/// and derived again from finite differences: weights of runs with and against must sum to one half each, and the
/// first, or first and second, power of time must cancel between them). Those papers are for ships of 50 m and more;
/// only the averaging is borrowed. Three and four runs cancel a changing current when they are equally spaced in time.
/// </remarks>
public static class TwoWayMean
{
    /// <summary>
    /// How far two headings may be from exact opposition [degrees] and still count as out and back. Common practice,
    /// no source. Exactly opposed runs leave nothing of a constant current; runs 30 degrees off leave up to a quarter of
    /// one that sets across them (sin 15 = 0.26).
    /// </summary>
    public const double ToleranceDegrees = 30;

    /// <summary>The mean speed of runs given in the order in which they were made.</summary>
    /// <param name="runs">One run or more.</param>
    /// <returns>
    /// One run: that run. Runs that alternate out and back: two, three or four by their own weights. Any other number
    /// or order with both ways present: the mean of the two headings' means. Any run out and run back further than
    /// <see cref="ToleranceDegrees"/> from opposition, or no run back: the plain mean, which keeps its current.
    /// </returns>
    /// <exception cref="ArgumentException">No runs.</exception>
    public static MeanSpeed Of(IReadOnlyList<TimedRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        if (runs.Count == 0)
            throw new ArgumentException("A mean speed needs at least one run.", nameof(runs));

        const int few = 16; // more than a trial has; beyond it the room comes from the heap
        var n = runs.Count;
        Span<double> headings = n <= few ? stackalloc double[n] : new double[n];
        Span<double> V = n <= few ? stackalloc double[n] : new double[n];
        for (var i = 0; i < n; i++)
            (headings[i], V[i]) = (runs[i].HeadingDegrees, runs[i].Speed.Knots); // [degrees], [kn]

        Span<bool> isOut = n <= few ? stackalloc bool[n] : new bool[n];
        Span<double> weights = n <= few ? stackalloc double[n] : new double[n];
        var opposition = new Opposition(headings, isOut, weights);
        return new MeanSpeed(
            Speed.FromKnots(opposition.Mean(V)),
            opposition.Method,
            opposition.LargestErrorDegrees,
            StandardErrorKnots(opposition, V));
    }

    private static double? StandardErrorKnots(Opposition opposition, ReadOnlySpan<double> knots)
    {
        var nu = opposition.DegreesOfFreedom;
        if (!opposition.RemovesCurrent || nu < 1)
            return null;

        var Q = opposition.Scatter(knots); // [kn2]
        return Math.Sqrt(Q / nu * opposition.SumOfSquaredWeights);
    }
}
