namespace FleetWake.Statistics.Charts;

/// <summary>
/// The exponentially weighted moving average chart for a known level and noise: Roberts, Technometrics 1 (1959) 239-250;
/// NIST/SEMATECH e-Handbook 6.3.2.4 (cited from memory).
/// </summary>
public static class Ewma
{
    /// <summary>Runs z_i = lambda x_i + (1 - lambda) z_(i-1) from the target.</summary>
    /// <param name="values">The readings in their order [the caller's unit], within 1e100 of zero.</param>
    /// <param name="target">The level when all is well [the same unit], within 1e100 of zero.</param>
    /// <param name="sd">Standard deviation of one reading [the same unit], above zero, finite.</param>
    /// <param name="lambda">Weight of the newest reading [1], above 0 up to 1.</param>
    /// <param name="width">L, how many standard deviations of z the limits lie from the target [1], above zero.</param>
    /// <param name="isSettled">
    /// True for limits as they will be after long, L sd sqrt(lambda / (2 - lambda)), as the handbook draws them; false
    /// for those of so many readings, which are narrower at first, times sqrt(1 - (1 - lambda)^(2i)).
    /// </param>
    /// <returns>A point for each reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static IReadOnlyList<EwmaPoint> Run(
        IReadOnlyList<double> values, double target, double sd, double lambda, double width, bool isSettled = false)
    {
        ArgumentNullException.ThrowIfNull(values);
        Range.Reading(target, nameof(target));
        Range.AboveZero(sd, nameof(sd));
        Range.Smoothing(lambda, nameof(lambda));
        Range.AboveZero(width, nameof(width));

        var settled = width * sd * Math.Sqrt(lambda / (2 - lambda));
        var left = 1.0; // (1 - lambda)^(2i), the share of the variance still to come
        var z = target;
        var run = new List<EwmaPoint>(values.Count);
        foreach (var x in values)
        {
            Range.Reading(x, nameof(values));
            z += lambda * (x - z);
            left *= (1 - lambda) * (1 - lambda);
            var reach = isSettled ? settled : settled * Math.Sqrt(1 - left);
            run.Add(new EwmaPoint(z, target - reach, target + reach));
        }

        return run;
    }
}
