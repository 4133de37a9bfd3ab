using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Trials;

/// <summary>The conditions of a trial, as far as somebody wrote them down.</summary>
public sealed record TrialConditions
{
    /// <summary>The air; null when nobody read anything of it.</summary>
    public AirState? Air { get; init; }

    /// <summary>The kind of water.</summary>
    public Water? Water { get; init; }

    /// <summary>Depth of water; null when not known.</summary>
    public Length? WaterDepth { get; init; }

    /// <summary>Mass aboard beside the boat itself: people, fuel, gear.</summary>
    public Mass? Load { get; init; }

    /// <summary>Trim of the engine [degrees], as its gauge or somebody's rule shows it; null when not read.</summary>
    public double? TrimDegrees { get; init; }
}

/// <summary>What a boat floats in.</summary>
public enum Water
{
    /// <summary>Lakes and rivers.</summary>
    Fresh,

    /// <summary>The sea.</summary>
    Salt,

    /// <summary>Between both, as in a river's mouth.</summary>
    Brackish,
}
