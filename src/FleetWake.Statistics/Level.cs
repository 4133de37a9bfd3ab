using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics;

/// <summary>The level of an interval, held against what can be served.</summary>
internal static class Level
{
    /// <summary>Half of what the interval leaves out, (1 - level) / 2.</summary>
    internal static double Tail(double level)
    {
        if (!(level > 0 && level <= StudentQuantile.HighestLevel))
            throw new ArgumentOutOfRangeException(
                nameof(level), level, "Must lie above 0 and up to 0.9999.");
        return (1 - level) / 2;
    }

    /// <summary>The z with P(|Z| &lt; z) = level for a standard normal Z.</summary>
    internal static double NormalQuantile(double level) => -Normal.InvCDF(0, 1, Tail(level));
}
