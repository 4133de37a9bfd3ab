namespace FleetWake.Propulsion.Trials;

/// <summary>A sea trial of one engine, as read, with all that bears on what it means.</summary>
/// <param name="Runs">The runs in their order, one or more.</param>
/// <param name="Conditions">The conditions.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Prop">The prop; null when not known.</param>
public sealed record TrialReading(IReadOnlyList<RunReading> Runs, TrialConditions Conditions, EngineData Engine, PropData? Prop)
{
    /// <summary>Part throttle on plane: good for slip and for telling causes apart, never for the band.</summary>
    public bool PartThrottle { get; init; }

    /// <summary>The conditions of the boat's baseline, which those of this trial are held against; null when there is none yet.</summary>
    public TrialConditions? Baseline { get; init; }

    /// <summary>
    /// Displacement of the boat as tried, 50 to 100 000 kg; null when not known, and then a small boat is assumed where the load
    /// is unlike the baseline's, for a passenger weighs most there.
    /// </summary>
    public Mass? Displacement { get; init; }

    /// <summary>How the boat answers a change of power; the priors when nothing is learned yet.</summary>
    public BoatResponse Response { get; init; } = BoatResponse.Prior;
}

/// <summary>How a boat with its engine and prop answers small changes; see the linear balance.</summary>
/// <param name="Gain">g [1]: dlnN per dln of engine power at a given rate. N_ref = N CF^g.</param>
/// <param name="Kappa">kappa [1]: dlnV per dlnN along the hull-and-prop line. V_ref = V CF^(kappa g).</param>
public sealed record BoatResponse(Uncertain Gain, Uncertain Kappa)
{
    /// <summary>
    /// What is assumed of a boat nothing is known of: g 0.38 +/- 0.10 and kappa 1.2 +/- 0.12, from the linear balance of
    /// four example boats, three open-water series and engine torque slopes of -2 to -0.5 (computed, no published value).
    /// </summary>
    public static BoatResponse Prior { get; } = new(new Uncertain(0.38, 0.10), new Uncertain(1.2, 0.12));
}
