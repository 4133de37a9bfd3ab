namespace FleetWake.Propulsion.Logs;

/// <summary>A logged engine rate.</summary>
/// <param name="At">When, by the log's clock with its jumps taken out; differences mean something, the date may not.</param>
/// <param name="Engine">What the tachometer showed.</param>
public readonly record struct RateSample(DateTimeOffset At, EngineRate Engine);

/// <summary>A logged speed over ground.</summary>
/// <param name="At">When, by the same clock as the rates of its log.</param>
/// <param name="Speed">Speed over ground, zero or more.</param>
/// <param name="CourseDegrees">Course over ground [degrees], 0 up to 360; null when not logged.</param>
public readonly record struct TrackSample(DateTimeOffset At, Speed Speed, double? CourseDegrees);
