namespace FleetWake.Propulsion.Causes;

/// <summary>
/// All that is known of one change: one boat, or several alike that shared props. Prop states travel with the prop, engine and
/// hull states stay with the boat, so that a swap tells the two apart.
/// </summary>
public sealed record CauseCase
{
    /// <summary>The ways in which these boats may answer; one or more.</summary>
    public required IReadOnlyList<ResponseModel> Models { get; init; }

    /// <summary>The baselines, one a boat.</summary>
    public required IReadOnlyList<BoatBaseline> Baselines { get; init; }

    /// <summary>Readings at wide-open throttle.</summary>
    public IReadOnlyList<WideOpenChange> WideOpen { get; init; } = [];

    /// <summary>Points at lower RPM on plane.</summary>
    public IReadOnlyList<PartThrottleChange> PartThrottle { get; init; } = [];

    /// <summary>Readings of gauges.</summary>
    public IReadOnlyList<GaugeReading> Gauges { get; init; } = [];

    /// <summary>What is held of causes beforehand.</summary>
    public IReadOnlyList<CausePrior> Priors { get; init; } = CausePrior.Weak;

    /// <summary>Nobody read the air of some trial, so that thin air passes for a weak engine.</summary>
    public bool AirUnread { get; init; }

    /// <summary>
    /// Whether somebody who watched for it saw the prop draw air: bursts of RPM without speed. Null when nobody watched, or nobody
    /// said. A prop that draws air steadily is not always seen to: three in four are, and one in ten is taken for it that does not
    /// (judgement, no source).
    /// </summary>
    public bool? VentilationSeen { get; init; }

    /// <summary>Standard deviation of lnP between props of one stamped pitch [1]: 1.5 %, the scale of ISO 484 classes I to III (judgement).</summary>
    public double PitchBetweenProps { get; init; } = 0.015;
}
