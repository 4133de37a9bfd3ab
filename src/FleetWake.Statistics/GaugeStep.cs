namespace FleetWake.Statistics;

/// <summary>The doubt of a reading that comes from the gauge's scale alone.</summary>
public static class GaugeStep
{
    /// <summary>
    /// Standard uncertainty of one reading rounded to the nearest step: step / sqrt(12). A rectangular distribution of
    /// half-width a = step/2 has variance a^2/3 (JCGM 100:2008, 4.3.7, equation 7; F.2.2.1 for a digital display).
    /// </summary>
    /// <param name="step">Distance between two neighbouring readings, in the gauge's unit; zero or more, finite.</param>
    /// <returns>Standard uncertainty in the same unit; 0 for a step of 0.</returns>
    /// <remarks>
    /// Readings that all fall on one step share this error, so averaging them does not shrink it: hand it to a fit as a
    /// noise floor. A gauge that cuts off instead of rounding is also half a step low, which this does not mend.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static double StandardUncertainty(double step)
    {
        if (!(step >= 0) || !double.IsFinite(step))
            throw new ArgumentOutOfRangeException(nameof(step), step, "Must be zero or a positive, finite number.");

        var a = step / 2; // half-width
        return a / Math.Sqrt(3);
    }
}
