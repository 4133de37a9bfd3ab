namespace FleetWake.Propulsion.Trials;

/// <summary>One timed run of one engine, as read.</summary>
/// <param name="Engine">What its tachometer showed.</param>
/// <param name="Speed">Speed over ground; null when none was read.</param>
/// <param name="HeadingDegrees">Heading or course over ground, true or magnetic but the same for all runs of a trial [degrees].</param>
public sealed record RunReading(EngineRate Engine, Speed? Speed, double HeadingDegrees)
{
    /// <summary>How long the readings were held; null when nobody timed it.</summary>
    public TimeSpan? Held { get; init; }

    /// <summary>When the run began; null when not known. Only differences are used.</summary>
    public DateTimeOffset? Began { get; init; }

    /// <summary>The limiter held the engine: the reading is a lower bound, not a value.</summary>
    public bool LimiterReached { get; init; }

    /// <summary>The prop drew air: a burst of RPM without speed.</summary>
    public bool Ventilated { get; init; }

    /// <summary>Scatter of the tachometer within the run, one standard deviation [rev/min]; null when only one number was read.</summary>
    public double? RpmScatter { get; init; }

    /// <summary>Scatter of the speed within the run, one standard deviation [kn]; null when only one number was read.</summary>
    public double? SpeedScatterKnots { get; init; }
}
