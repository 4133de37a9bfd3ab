using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics.Charts;

/// <summary>
/// A CUSUM that needs no baseline: each reading is judged by those before it. Hawkins, J. R. Statist. Soc. D (The
/// Statistician) 36 (1987) 299-316; cited from memory. A picture for people, beside the alarm and not instead of it.
/// </summary>
/// <remarks>
/// It takes three readings to say anything, and a drift that is there from the beginning teaches the chart a wrong level:
/// what it does not show is no proof. A drift already under way is answered weakly, for each reading shifts the mean.
/// </remarks>
public static class SelfStartingCusum
{
    /// <summary>The farthest score that is still a number of double precision's normal distribution.</summary>
    public const double FarthestScore = 8;

    /// <summary>
    /// T_n = sqrt((n-1)/n) (x_n - mean of the n-1 before) / their standard deviation, and the score
    /// Phi^-1(F_(n-2)(T_n)).
    /// </summary>
    /// <param name="readings">The readings in their order; the chart begins anew whenever the stretch changes.</param>
    /// <param name="allowance">k, in standard deviations [1]; zero or more, finite.</param>
    /// <param name="decision">h, in standard deviations [1]; above zero, finite.</param>
    /// <param name="clip">
    /// Scores beyond this count as this [1], above zero, at most <see cref="FarthestScore"/>: one bad reading alone then
    /// cannot bring a signal. 2.5 serves trials (chosen on simulated fleets, no published source); it makes the run
    /// without cause longer than the tables say.
    /// </param>
    /// <param name="noiseFloor">
    /// The least standard deviation a reading can have [the readings' unit], such as that of a gauge's step; zero or
    /// more, finite. Two equal readings to begin with would otherwise make the third an alarm.
    /// </param>
    /// <returns>A point for each reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static IReadOnlyList<SelfStartingPoint> Run(
        IReadOnlyList<ChartReading> readings,
        double allowance,
        double decision,
        double clip = FarthestScore,
        double noiseFloor = 0)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Range.ZeroOrMore(allowance, nameof(allowance));
        Range.AboveZero(decision, nameof(decision));
        Range.ZeroOrMore(noiseFloor, nameof(noiseFloor));
        if (!(clip > 0 && clip <= FarthestScore))
            throw new ArgumentOutOfRangeException(nameof(clip), clip, $"Must lie above 0 and up to {FarthestScore}.");

        var run = new List<SelfStartingPoint>(readings.Count);
        var nothing = new CusumSides(0, 0, 0, 0, decision);
        var before = default(Before);
        foreach (var (x, stretch) in readings)
        {
            Range.Reading(x, nameof(readings));
            if (run.Count > 0 && stretch != before.Stretch)
                before = default;
            var t = before.Student(x, noiseFloor);
            double? score = before.Count < 2 ? null : Math.Clamp(Score(t, before, x), -clip, clip);
            var last = before.Count == 0 ? nothing : run[^1].Sums;
            run.Add(new SelfStartingPoint(t, score, score is { } u ? last.After(u, allowance) : nothing));
            before = before.With(x, stretch);
        }

        return run;
    }

    // The tail on T's own side keeps its digits however small it is; one minus it does not.
    private static double Score(double? t, Before before, double x)
    {
        if (t is not { } T)
            return Math.Sign(x - before.Mean) * FarthestScore; // no scatter yet: any difference is beyond all doubt
        var tail = StudentT.CDF(0, 1, before.Count - 1, -Math.Abs(T));
        return tail < 1e-15 ? Math.Sign(T) * FarthestScore : -Math.Sign(T) * Normal.InvCDF(0, 1, tail);
    }

    /// <summary>Mean and scatter of a stretch so far (Welford 1962: no digits lost to a large level).</summary>
    private readonly record struct Before(int Stretch, int Count, double Mean, double SquaresAboutMean)
    {
        internal double? Student(double x, double floor)
        {
            if (Count < 2)
                return null;
            var s = Math.Max(Math.Sqrt(SquaresAboutMean / (Count - 1)), floor);
            return s > 0 ? Math.Sqrt(Count / (Count + 1.0)) * ((x - Mean) / s) : x == Mean ? 0 : null;
        }

        internal Before With(double x, int stretch)
        {
            var mean = Mean + ((x - Mean) / (Count + 1));
            return new Before(stretch, Count + 1, mean, SquaresAboutMean + ((x - Mean) * (x - mean)));
        }
    }
}
