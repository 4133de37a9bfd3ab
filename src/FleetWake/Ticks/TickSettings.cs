namespace FleetWake.Ticks;

/// <summary>How often ticks come. Each asks only whether something is due.</summary>
/// <param name="Digest">Interval of the digest tick.</param>
/// <param name="Fit">Interval of the fit tick.</param>
public sealed record TickSettings(TimeSpan Digest, TimeSpan Fit)
{
    /// <summary>In service.</summary>
    public static TickSettings Usual { get; } = new(TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(1));
}
