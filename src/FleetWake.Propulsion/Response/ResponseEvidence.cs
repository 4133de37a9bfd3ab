namespace FleetWake.Propulsion.Response;

/// <summary>
/// One known change of an engine's power and what its RPM did: two trials of one mounting in unlike air, within one stretch that
/// nothing else changed in.
/// </summary>
/// <param name="LnPower">dln of power at a given RPM with its doubt [1]: minus the difference of ln CF of the two trials.</param>
/// <param name="LnRpm">dln of RPM as read, not corrected, with its doubt [1].</param>
public sealed record PowerStep(Uncertain LnPower, Uncertain LnRpm)
{
    /// <summary>The boat; null when not known, and then each step counts as another boat's. Steps of one boat share what it differs from its family by.</summary>
    public string? Boat { get; init; }
}

/// <summary>One known change of pitch and what corrected RPM did: a repitch, or a swap for a prop of another pitch.</summary>
/// <param name="LnPitch">
/// dlnP with its doubt [1]. A repitch comes out within some 1.5 % of what was asked, and two props differ by as much from their
/// stamps (judgement); then 0.015 for a repitch and 0.021 for a swap.
/// </param>
/// <param name="LnRpm">dln of corrected RPM with its doubt [1].</param>
public sealed record PitchStep(Uncertain LnPitch, Uncertain LnRpm)
{
    /// <summary>The boat; null when not known, and then each step counts as another boat's. Steps of one boat share what it differs from its family by.</summary>
    public string? Boat { get; init; }
}
