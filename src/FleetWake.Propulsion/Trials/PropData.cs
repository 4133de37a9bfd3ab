namespace FleetWake.Propulsion.Trials;

/// <summary>What is known of the prop under trial.</summary>
/// <param name="Pitch">Its pitch, stamped or as a shop last told it; the effective one differs by several per cent.</param>
public sealed record PropData(Length Pitch)
{
    /// <summary>Its diameter.</summary>
    public Length? Diameter { get; init; }

    /// <summary>Number of blades.</summary>
    public int? Blades { get; init; }
}
