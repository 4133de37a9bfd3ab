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

    private static readonly double[] s_double = [1 / 2.0, 1 / 2.0];
    private static readonly double[] s_three = [1 / 4.0, 2 / 4.0, 1 / 4.0];
    private static readonly double[] s_four = [1 / 8.0, 3 / 8.0, 3 / 8.0, 1 / 8.0];

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
        if (runs.Count == 1)
            return new MeanSpeed(runs[0].Speed, MeanSpeedMethod.SingleRun, null, null);

        var opposition = new Opposition(runs);
        var V = runs.Select(run => run.Speed.Knots).ToArray(); // [kn]
        if (!opposition.BothWays || opposition.LargestErrorDegrees > ToleranceDegrees)
            return new MeanSpeed(
                Speed.FromKnots(V.Average()), MeanSpeedMethod.HeadingsNotOpposed, opposition.LargestErrorDegrees, null);

        var (method, w) = (opposition.Alternates, runs.Count) switch
        {
            (true, 2) => (MeanSpeedMethod.DoubleRun, s_double),
            (true, 3) => (MeanSpeedMethod.ThreeRuns, s_three),
            (true, 4) => (MeanSpeedMethod.FourRuns, s_four),
            _ => (MeanSpeedMethod.MeanOfHeadings, opposition.MeanOfHeadingsWeights()),
        };
        return new MeanSpeed(
            Speed.FromKnots(V.Zip(w, (v, weight) => v * weight).Sum()),
            method,
            opposition.LargestErrorDegrees,
            opposition.StandardErrorKnots(V, w));
    }
}
