using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>A stretch of a log over which RPM, speed and course held.</summary>
/// <param name="Began">When it began, by the log's clock.</param>
/// <param name="Held">How long it held.</param>
/// <param name="Engine">Mean engine rate; null when the log has none.</param>
/// <param name="RpmScatter">Scatter of the rate, one standard deviation [rev/min]; null with fewer than two readings.</param>
/// <param name="Speed">Mean speed over ground; null when the log has none.</param>
/// <param name="SpeedScatterKnots">Scatter of the speed, one standard deviation [kn]; null with fewer than two readings.</param>
/// <param name="CourseDegrees">Mean course over ground [degrees], 0 up to 360; null when the log has none.</param>
/// <param name="WideOpen">It is among the fastest of its log, and so taken for wide open throttle.</param>
public sealed record Plateau(
    DateTimeOffset Began,
    TimeSpan Held,
    EngineRate? Engine,
    double? RpmScatter,
    Speed? Speed,
    double? SpeedScatterKnots,
    double? CourseDegrees,
    bool WideOpen)
{
    /// <summary>The stretch as a run.</summary>
    /// <param name="engine">The engine rate where the log has none.</param>
    /// <param name="headingDegrees">The heading where the log has no course [degrees].</param>
    internal RunReading Run(EngineRate engine, double headingDegrees) => new(engine, Speed, headingDegrees)
    {
        Held = Held,
        Began = Began,
        RpmScatter = RpmScatter,
        SpeedScatterKnots = SpeedScatterKnots,
    };
}
