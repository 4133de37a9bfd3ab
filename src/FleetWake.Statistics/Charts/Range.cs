namespace FleetWake.Statistics.Charts;

/// <summary>What a chart's settings must be, said in one way.</summary>
internal static class Range
{
    private const double FarthestReading = 1e100; // beyond it squares overflow

    internal static void Finite(double value, string name)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "Must be a finite number.");
    }

    internal static void Reading(double value, string name)
    {
        if (!(Math.Abs(value) <= FarthestReading))
            throw new ArgumentOutOfRangeException(name, value, $"Must lie within -{FarthestReading} and {FarthestReading}.");
    }

    internal static void ZeroOrMore(double value, string name)
    {
        if (!(value >= 0) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "Must be zero or more and finite.");
    }

    internal static void AboveZero(double value, string name)
    {
        if (!(value > 0) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, "Must be above zero and finite.");
    }

    internal static void Smoothing(double lambda, string name)
    {
        if (!(lambda > 0 && lambda <= 1))
            throw new ArgumentOutOfRangeException(name, lambda, "Must lie above 0 and up to 1.");
    }
}
