namespace FleetWake.Propulsion.Hull;

/// <summary>A prismatic planing hull: constant beam and deadrise where it is wetted. Arms as in Savitsky 1964, figure 16.</summary>
public sealed record PlaningHull
{
    /// <summary>Mass of the boat as loaded, above zero.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Beam b between the chines, above zero.</summary>
    public required Length Beam { get; init; }

    /// <summary>Deadrise beta [deg], 0 to 35; Savitsky's tests went to 30.</summary>
    public required double DeadriseDegrees { get; init; }

    /// <summary>LCG: centre of gravity forward of the transom, above zero.</summary>
    public required Length GravityForward { get; init; }

    /// <summary>VCG: centre of gravity above the keel.</summary>
    public required Length GravityAbove { get; init; }

    /// <summary>epsilon: angle of the thrust line to the keel [deg], -20 to 20.</summary>
    public double ThrustAngleDegrees { get; init; }

    /// <summary>f: distance of the thrust line below the centre of gravity, measured at right angles to it [m].</summary>
    public Length ThrustArm { get; init; }

    internal void Check()
    {
        Positive(Mass.Kilograms, nameof(Mass), "kg");
        Positive(Beam.Metres, nameof(Beam), "m");
        Positive(GravityForward.Metres, nameof(GravityForward), "m");
        if (DeadriseDegrees is not (>= 0 and <= 35))
            throw new ArgumentOutOfRangeException(nameof(DeadriseDegrees), DeadriseDegrees, "Must lie in 0 to 35 degrees.");

        if (ThrustAngleDegrees is not (>= -20 and <= 20))
            throw new ArgumentOutOfRangeException(nameof(ThrustAngleDegrees), ThrustAngleDegrees, "Must lie in -20 to 20 degrees.");
    }

    private static void Positive(double value, string name, string unit)
    {
        if (!(value > 0))
            throw new ArgumentOutOfRangeException(name, value, $"Must be above zero [{unit}].");
    }
}
