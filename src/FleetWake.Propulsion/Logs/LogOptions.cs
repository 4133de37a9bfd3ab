namespace FleetWake.Propulsion.Logs;

/// <summary>What a log does not say of itself.</summary>
public sealed record LogOptions
{
    /// <summary>The format; null lets the beginning of the log tell.</summary>
    public LogFormat? Format { get; init; }

    /// <summary>
    /// Which engine of several, as the log names it: the number of an RPM sentence, or "port" of propulsion.port. Null takes
    /// the one with the most readings, and a notice says that there were others.
    /// </summary>
    public string? Engine { get; init; }

    /// <summary>Gear ratio, for logs that read the prop shaft and not the engine; without it such readings are dropped.</summary>
    public GearRatio? Gear { get; init; }

    /// <summary>Lines (or for GPX points, for JSON objects) that are read at most; what follows is not read and a notice says so.</summary>
    public int MostLines { get; init; } = 2_000_000;
}
