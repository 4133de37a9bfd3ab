using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// How fast an engine turns, at its crankshaft: what a tachometer shows. Valid from zero up; a negative rate is refused, because a tachometer shows no sign and a
/// trial in reverse gear says nothing about drift. <c>default</c> is a stopped engine.
/// </summary>
/// <remarks>
/// Held in revolutions per minute, not per second: the SI names no unit of turning but the radian per second, and
/// dividing by 60 and multiplying again changes about one whole rpm in twenty-five by a bit, which would put a reading
/// on the edge of a rated band on the wrong side of it. So the rpm come back as they were given, to the bit.
/// </remarks>
public readonly record struct EngineRate
{
    private readonly double _revolutionsPerMinute;

    private EngineRate(double revolutionsPerMinute) => _revolutionsPerMinute = revolutionsPerMinute;

    /// <summary>The rate [rev/min], exactly as given.</summary>
    public double RevolutionsPerMinute => _revolutionsPerMinute;

    /// <summary>The rate [rev/s]; 60 s a minute exactly (SI Brochure, 9th edition 2019, table 8).</summary>
    public double RevolutionsPerSecond => _revolutionsPerMinute / ExactUnits.SecondsPerMinute;

    /// <summary>Takes a rate in revolutions per minute.</summary>
    /// <param name="revolutionsPerMinute">The rate [rev/min], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static EngineRate FromRevolutionsPerMinute(double revolutionsPerMinute) =>
        new(Reject.NotFiniteOrNegative(revolutionsPerMinute, revolutionsPerMinute));

    /// <summary>The rate in rpm to three decimals, for a log line; never for a record.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{RevolutionsPerMinute:0.###} rpm");
}
