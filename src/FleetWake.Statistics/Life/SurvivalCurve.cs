namespace FleetWake.Statistics.Life;

/// <summary>The share that outlives each age, a staircase made by <see cref="KaplanMeier"/>. Immutable.</summary>
public sealed class SurvivalCurve
{
    // A product of fractions misses a share such as 1/2 by a bit; that must not carry the median to the next step.
    private const double Slack = 1e-12;

    private readonly Lifetime[] _lives;
    private readonly double _level;
    private readonly double _z;

    internal SurvivalCurve(Lifetime[] lives, IReadOnlyList<SurvivalStep> steps, double level, double z)
    {
        _lives = lives;
        _level = level;
        _z = z;
        Steps = steps;
        FollowedToHours = lives.Max(life => life.Hours);
    }

    /// <summary>One for each age at which some ended, in rising order; up to the one that left none.</summary>
    public IReadOnlyList<SurvivalStep> Steps { get; }

    /// <summary>How many lifetimes were told.</summary>
    public int Count => _lives.Length;

    /// <summary>How many of them have ended.</summary>
    public int Ended => _lives.Count(life => life.HasEnded);

    /// <summary>The greatest age that was watched [h]; of what comes after it the curve knows nothing.</summary>
    public double FollowedToHours { get; }

    /// <summary>The share that outlives an age.</summary>
    /// <param name="hours">The age [h], zero or more, finite.</param>
    /// <returns>
    /// A share [1]; null beyond <see cref="FollowedToHours"/> (unless none was left), or at an age before the first end
    /// at which nobody was followed.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Estimate? At(double hours)
    {
        if (!(hours >= 0) || !double.IsFinite(hours))
            throw new ArgumentOutOfRangeException(nameof(hours), hours, "Must be zero or more and finite.");

        var step = Steps.LastOrDefault(step => step.Hours <= hours);
        if (step is { Alive.Value: 0 })
            return step.Alive;
        if (hours > FollowedToHours)
            return null;
        return step?.Alive ?? NoneEndedBefore(hours);
    }

    /// <summary>
    /// The age by which the share still going has come down to a value: the first age t with S(t) at most that share.
    /// Its limits are the first ages at which the limits of S come down to it (Brookmeyer and Crowley, Biometrics 38
    /// (1982) 29-41; cited from memory). The median is the age of share 0.5.
    /// </summary>
    /// <param name="share">The share still going, 0 to 1 exclusive.</param>
    /// <returns>Ages [h]; null for one that was not reached while anyone was followed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1.</exception>
    public LifeReached HoursUntil(double share)
    {
        if (!(share > 0 && share < 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "Must lie between 0 and 1.");

        return new LifeReached(First(alive => alive.Value), First(alive => alive.Low), First(alive => alive.High));

        double? First(Func<Estimate, double> of) => Steps.FirstOrDefault(step => of(step.Alive) <= share + Slack)?.Hours;
    }

    /// <summary>
    /// The mean life within a horizon, the area under the curve up to it: what a prop gives on average before that age.
    /// Variance = sum of A_i^2 d_i / (n_i (n_i - d_i)), A_i the area from step i on (Klein and Moeschberger, Survival
    /// Analysis 2003, 4.5.1-2; cited from memory); normal limits, cut off at 0 and the horizon.
    /// </summary>
    /// <param name="horizonHours">The horizon [h], above zero, finite.</param>
    /// <returns>Hours [h]; null when the horizon lies beyond <see cref="FollowedToHours"/>, or when none ended before
    /// it, for then there is no scatter to judge by.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not above zero, or not finite.</exception>
    public Estimate? MeanWithin(double horizonHours)
    {
        if (!(horizonHours > 0) || !double.IsFinite(horizonHours))
            throw new ArgumentOutOfRangeException(nameof(horizonHours), horizonHours, "Must be above zero and finite.");
        var steps = Steps.TakeWhile(step => step.Hours < horizonHours).ToArray();
        if (steps.Length == 0 || (horizonHours > FollowedToHours && steps[^1].Alive.Value > 0))
            return null;

        var area = 0.0; // [h]
        var variance = 0.0; // [h^2]
        for (var i = steps.Length - 1; i >= 0; i--)
        {
            area += steps[i].Alive.Value * ((i + 1 < steps.Length ? steps[i + 1].Hours : horizonHours) - steps[i].Hours);
            double n = steps[i].AtRisk, d = steps[i].Ended;
            if (n > d) // else the area from here on is none
                variance += area * area * d / (n * (n - d));
        }

        area += steps[0].Hours;
        var se = Math.Sqrt(variance);
        return new Estimate(
            area, se, Math.Max(0, area - (_z * se)), Math.Min(horizonHours, area + (_z * se)), _level);
    }

    private Estimate? NoneEndedBefore(double hours)
    {
        var n = _lives.Count(life => life.FromHours <= hours && life.Hours >= hours);
        if (n == 0)
            return null;
        var low = Math.Pow((1 - _level) / 2, 1.0 / n);
        return new Estimate(1, Math.Sqrt(low * (1 - low) / n), low, 1, _level);
    }
}
