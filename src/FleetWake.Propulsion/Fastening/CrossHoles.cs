namespace FleetWake.Propulsion.Fastening;

/// <summary>How a prop shaft is drilled for its split pin.</summary>
public enum CrossHoles
{
    /// <summary>One hole through the shaft.</summary>
    One,

    /// <summary>Two holes through the shaft, at 90 degrees to each other.</summary>
    TwoAtRightAngles,
}
