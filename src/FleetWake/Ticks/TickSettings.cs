namespace FleetWake.Ticks;

/// <summary>How often ticks come. Each asks only whether something is due.</summary>
/// <param name="Digest">Interval of the digest tick.</param>
/// <param name="Fit">Interval of the fit tick.</param>
public sealed record TickSettings(TimeSpan Digest, TimeSpan Fit)
{
    /// <summary>Interval of the alert tick: what cannot wait is told within it.</summary>
    public TimeSpan Alert { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>In service.</summary>
    public static TickSettings Usual { get; } = new(TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(1));
}
