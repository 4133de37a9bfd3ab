namespace FleetWake.Propulsion.Balance;

/// <summary>
/// How a boat differs from itself at its baseline. <c>default</c> is the baseline: every number is a change, zero when there is none,
/// and a fraction of what it changes unless it says otherwise.
/// </summary>
/// <remarks>Ranges are generous, to hold what a dock can meet; outside them a solve refuses and names the member.</remarks>
public readonly record struct BoatState
{
    /// <summary>Change of effective pitch [1]: -0.06 is 6 % lost to wear or cup. -0.5 to 0.5.</summary>
    public double PitchChange { get; init; }

    /// <summary>Change of diameter at the same pitch and area ratio [1]: -0.01 is 1 % lost at the tips. -0.5 to 0.5.</summary>
    public double DiameterChange { get; init; }

    /// <summary>Added drag coefficient of the blade sections [1], as from roughness; see <c>Hull.BladeRoughness</c>. -0.005 to 0.1.</summary>
    public double SectionDragChange { get; init; }

    /// <summary>Change of the engine's torque at any given rate [1], its own or the air's: about 1/CF - 1. -0.95 to 1.</summary>
    public double EngineTorqueChange { get; init; }

    /// <summary>Change of the hull's resistance at any given speed [1]. -0.9 to 10.</summary>
    public double ResistanceChange { get; init; }

    /// <summary>
    /// Change of the water's density as the blades feel it [1]; salt to fresh about -0.026. What it does to the hull is said by
    /// <see cref="ResistanceChange"/>. -0.1 to 0.1.
    /// </summary>
    public double WaterDensityChange { get; init; }

    /// <summary>Share of the prop shaft's turns that the hub loses [1]: n = (1 - s) N/G. 0 to 0.9.</summary>
    public double HubSlip { get; init; }

    /// <summary>Share of K_T lost at any given J [1], as to ventilation. -0.5 to 0.9.</summary>
    public double ThrustLoss { get; init; }

    /// <summary>Share of K_Q lost at any given J [1]; with ventilation about 0.8 of <see cref="ThrustLoss"/> (common practice, no
    /// source). -0.5 to 0.9.</summary>
    public double TorqueLoss { get; init; }

    internal void Check()
    {
        _ = Reject.NotWithin(PitchChange, -0.5, 0.5, nameof(PitchChange));
        _ = Reject.NotWithin(DiameterChange, -0.5, 0.5, nameof(DiameterChange));
        _ = Reject.NotWithin(SectionDragChange, -0.005, 0.1, nameof(SectionDragChange));
        _ = Reject.NotWithin(EngineTorqueChange, -0.95, 1, nameof(EngineTorqueChange));
        _ = Reject.NotWithin(ResistanceChange, -0.9, 10, nameof(ResistanceChange));
        _ = Reject.NotWithin(WaterDensityChange, -0.1, 0.1, nameof(WaterDensityChange));
        _ = Reject.NotWithin(HubSlip, 0, 0.9, nameof(HubSlip));
        _ = Reject.NotWithin(ThrustLoss, -0.5, 0.9, nameof(ThrustLoss));
        _ = Reject.NotWithin(TorqueLoss, -0.5, 0.9, nameof(TorqueLoss));
    }
}
