namespace FleetWake.Statistics;

/// <summary>
/// Ordinary least squares with one slope for all stretches and one level for each: the analysis of covariance (Fisher
/// 1932; textbook form in Draper and Smith, Applied Regression Analysis; both cited from memory). With one stretch it
/// is the straight line.
/// </summary>
/// <remarks>
/// Solved by sums about each stretch's own mean, which is the exact solution of the normal equations for this layout
/// and loses no digits to a large offset, as NIST's certified Norris line shows. Pure: nothing is kept.
/// </remarks>
public static class StraightLine
{
    /// <summary>Fits the line.</summary>
    /// <param name="points">The readings in any order; X and Y finite.</param>
    /// <param name="level">Level of every interval that the fit gives, above 0 and up to 0.9999, such as 0.8.</param>
    /// <param name="noiseFloor">
    /// The least standard deviation of one reading that is believed, in the unit of Y; zero or more. It takes the
    /// place of a smaller residual standard deviation, so that three readings that happen to line up claim no
    /// certainty; the degrees of freedom stay those of the readings.
    /// </param>
    /// <returns>
    /// The fit, or null when the readings carry none: no degree of freedom left (points less stretches less one below
    /// one), or no spread in X within any stretch.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Level or noise floor outside its range.</exception>
    /// <exception cref="ArgumentException">A reading that is not finite, or readings so large that their squares are not.</exception>
    public static LineFit? Fit(IReadOnlyList<LinePoint> points, double level, double noiseFloor)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (!(level > 0 && level <= StudentQuantile.HighestLevel))
            throw new ArgumentOutOfRangeException(nameof(level), level, "Must lie above 0 and up to 0.9999.");
        if (!(noiseFloor >= 0) || !double.IsFinite(noiseFloor))
            throw new ArgumentOutOfRangeException(nameof(noiseFloor), noiseFloor, "Must be zero or more, and finite.");
        if (points.Any(p => !double.IsFinite(p.X) || !double.IsFinite(p.Y)))
            throw new ArgumentException("Every reading must be finite.", nameof(points));

        var means = points.GroupBy(p => p.Stretch).ToDictionary(g => g.Key, g => Middle([.. g]));
        var nu = points.Count - means.Count - 1; // degrees of freedom
        if (nu < 1)
            return null;

        var about = points.Select(p => (dx: p.X - means[p.Stretch].X, dy: p.Y - means[p.Stretch].Y)).ToArray();
        var Sxx = about.Sum(p => p.dx * p.dx);
        if (Sxx == 0)
            return null;

        var b = about.Sum(p => p.dx * p.dy) / Sxx;
        var SSE = about.Sum(p => (p.dy - (b * p.dx)) * (p.dy - (b * p.dx)));
        if (!double.IsFinite(Sxx) || !double.IsFinite(SSE))
            throw new ArgumentException("The readings are too large to be squared.", nameof(points));

        return new LineFit(means, b, Sxx, Math.Max(Math.Sqrt(SSE / nu), noiseFloor), nu, level);
    }

    /// <summary>
    /// The mean of a stretch, taken from its first point: then equal X have no spread at all, not one of rounding.
    /// </summary>
    private static StretchMean Middle(LinePoint[] stretch)
    {
        var first = stretch[0];
        return new StretchMean(
            stretch.Length,
            first.X + stretch.Average(p => p.X - first.X),
            first.Y + stretch.Average(p => p.Y - first.Y));
    }
}
