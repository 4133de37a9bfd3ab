namespace FleetWake.Propulsion.Causes;

/// <summary>What can have changed a boat's RPM and speed at wide-open throttle, as far as those two can show it.</summary>
public enum Cause
{
    /// <summary>Nothing of a size that the readings show.</summary>
    None,

    /// <summary>Effective pitch lost: blades flattened, cup worn off. RPM up.</summary>
    PitchOrCupLoss,

    /// <summary>Tips lost at the same pitch. RPM up.</summary>
    DiameterLoss,

    /// <summary>The hub turns within the prop under load. RPM up, speed down.</summary>
    HubSlip,

    /// <summary>The prop draws air and loses thrust. RPM up.</summary>
    Ventilation,

    /// <summary>Less resistance than at the baseline: fewer people, less fuel, a bottom cleaner than it was. RPM up, speed up.</summary>
    LighterLoad,

    /// <summary>The engine gives less torque at a given RPM. RPM down.</summary>
    EnginePower,

    /// <summary>More resistance: load, growth on the hull, trim. RPM down, speed down more.</summary>
    HullOrLoad,

    /// <summary>More drag of the blades' sections: rough, nicked or fouled blades. RPM down.</summary>
    BladeRoughness,

    /// <summary>No one cause fits: several at once, or a reading that is wrong.</summary>
    Several,
}

/// <summary>The two groups that RPM and speed tell apart well.</summary>
public enum CauseGroup
{
    /// <summary>Neither.</summary>
    None,

    /// <summary>The engine turns faster than at the baseline.</summary>
    RpmUp,

    /// <summary>The engine turns slower than at the baseline.</summary>
    RpmDown,
}

/// <summary>What is always so of a cause.</summary>
public static class CauseFacts
{
    /// <summary>The causes that have a size, in the order of their declaration; neither <see cref="Cause.None"/> nor <see cref="Cause.Several"/>.</summary>
    public static IReadOnlyList<Cause> Single { get; } =
        [Cause.PitchOrCupLoss, Cause.DiameterLoss, Cause.HubSlip, Cause.Ventilation, Cause.LighterLoad, Cause.EnginePower, Cause.HullOrLoad, Cause.BladeRoughness];

    /// <summary>The group that a cause belongs to; none for <see cref="Cause.None"/> and <see cref="Cause.Several"/>.</summary>
    /// <param name="cause">The cause.</param>
    public static CauseGroup GroupOf(Cause cause) => cause switch
    {
        Cause.PitchOrCupLoss or Cause.DiameterLoss or Cause.HubSlip or Cause.Ventilation or Cause.LighterLoad => CauseGroup.RpmUp,
        Cause.EnginePower or Cause.HullOrLoad or Cause.BladeRoughness => CauseGroup.RpmDown,
        _ => CauseGroup.None,
    };

    /// <summary>
    /// Whether the state travels with the prop to the next boat. Blades and hub do; engine, hull and load stay with the boat,
    /// and so does ventilation, for the height and trim of the engine make it more often than the prop does (common practice,
    /// no source).
    /// </summary>
    /// <param name="cause">The cause.</param>
    public static bool TravelsWithProp(Cause cause) => cause is Cause.PitchOrCupLoss or Cause.DiameterLoss or Cause.HubSlip or Cause.BladeRoughness;
}
