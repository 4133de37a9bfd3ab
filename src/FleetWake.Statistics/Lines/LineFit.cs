namespace FleetWake.Statistics;

/// <summary>
/// A line fitted by <see cref="StraightLine.Fit"/>: one slope, one level for each stretch, and the doubt of both. X and
/// Y are in the caller's units. Immutable.
/// </summary>
/// <remarks>
/// Intervals are those of Student's t for normal, equal, independent noise. They are about the line, not about the next
/// reading, which scatters about the line by <see cref="ResidualSd"/> besides.
/// </remarks>
public sealed class LineFit
{
    private readonly Dictionary<int, StretchMean> _means;
    private readonly double _Sxx; // sum of squares of X about the stretches' means
    private readonly double _level;

    internal LineFit(
        Dictionary<int, StretchMean> means, double slope, double Sxx, double residualSd, int degreesOfFreedom, double level)
    {
        _means = means;
        _Sxx = Sxx;
        _level = level;
        ResidualSd = residualSd;
        DegreesOfFreedom = degreesOfFreedom;
        Points = means.Values.Sum(mean => mean.Count);
        LevelQuantile = StudentQuantile.TwoSided(level, degreesOfFreedom);
        LastStretch = means.Keys.Max();
        Slope = WithDoubt(slope, residualSd / Math.Sqrt(Sxx));
    }

    /// <summary>The common slope [unit of Y per unit of X]; its standard error is s / sqrt(Sxx).</summary>
    public Estimate Slope { get; }

    /// <summary>Standard deviation s of one reading about its line [unit of Y], never below the noise floor.</summary>
    public double ResidualSd { get; }

    /// <summary>Degrees of freedom: points less stretches less one; at least 1.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>How many readings were fitted.</summary>
    public int Points { get; }

    /// <summary>How many standard errors the intervals reach out to each side: the t of the level [1].</summary>
    public double LevelQuantile { get; }

    /// <summary>The greatest stretch number, the one that goes on into the future.</summary>
    public int LastStretch { get; }

    /// <summary>The line of the last stretch at a place, as <see cref="LevelOf"/>.</summary>
    /// <param name="x">The place [unit of X], finite; outside the readings it extrapolates, with a widening doubt.</param>
    /// <returns>The mean response [unit of Y].</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite.</exception>
    public Estimate At(double x) => LevelOf(LastStretch, x);

    /// <summary>
    /// The line of a stretch at a place: mean y + b (x - mean x), standard error s sqrt(1/n + (x - mean x)^2 / Sxx),
    /// with the means and the n of that stretch and the slope and Sxx of all.
    /// </summary>
    /// <param name="stretch">The stretch, one of those fitted.</param>
    /// <param name="x">The place [unit of X], finite; outside the stretch it extrapolates.</param>
    /// <returns>The mean response [unit of Y].</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such stretch, or <paramref name="x"/> is not finite.</exception>
    public Estimate LevelOf(int stretch, double x)
    {
        if (!_means.TryGetValue(stretch, out var mean))
            throw new ArgumentOutOfRangeException(nameof(stretch), stretch, "No reading belongs to this stretch.");
        if (!double.IsFinite(x))
            throw new ArgumentOutOfRangeException(nameof(x), x, "Must be a finite number.");

        var u = x - mean.X;
        return WithDoubt(mean.Y + (Slope.Value * u), ResidualSd * Math.Sqrt((1.0 / mean.Count) + (u * u / _Sxx)));
    }

    /// <summary>
    /// Where the line of the last stretch, going on from a place, reaches a value, with the interval over which its
    /// confidence band does. See <see cref="Statistics.Crossing"/> for the meaning of every case.
    /// </summary>
    /// <param name="y">The value to be reached [unit of Y], finite.</param>
    /// <param name="fromX">Where to start looking [unit of X], finite; normally at or after the last reading.</param>
    /// <param name="horizonX">Where to stop looking [unit of X], finite, at least <paramref name="fromX"/>.</param>
    /// <returns>Places [unit of X]; null for what does not happen within the horizon.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or the horizon lies before the start.</exception>
    public Crossing Crossing(double y, double fromX, double horizonX)
    {
        if (!double.IsFinite(y))
            throw new ArgumentOutOfRangeException(nameof(y), y, "Must be a finite number.");
        if (!double.IsFinite(fromX))
            throw new ArgumentOutOfRangeException(nameof(fromX), fromX, "Must be a finite number.");
        if (!double.IsFinite(horizonX) || horizonX < fromX)
            throw new ArgumentOutOfRangeException(nameof(horizonX), horizonX, "Must be finite and not before the start.");

        var last = _means[LastStretch];
        return new ConfidenceBand(
            last.X,
            last.Y,
            Slope.Value,
            LevelQuantile * ResidualSd / Math.Sqrt(last.Count),
            LevelQuantile * Slope.StandardError).Crossing(y, fromX, horizonX);
    }

    private Estimate WithDoubt(double value, double standardError)
    {
        var reach = LevelQuantile * standardError;
        return new Estimate(value, standardError, value - reach, value + reach, _level);
    }
}
