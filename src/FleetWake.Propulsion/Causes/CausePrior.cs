namespace FleetWake.Propulsion.Causes;

/// <summary>What is held of a cause before any reading: how likely, and how large when it is there.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Weight">Its weight against the others, above zero; they need not sum to one.</param>
/// <param name="Width">
/// Scale of the half-normal distribution of its size [1], above zero; see <see cref="CauseResponse"/> for what the size of each
/// is. Not used for <see cref="Cause.None"/> and <see cref="Cause.Several"/>.
/// </param>
public sealed record CausePrior(Cause Cause, double Weight, double Width)
{
    /// <summary>
    /// Weak priors. No wear rates of outboard props are published, so the widths are judgement, no source: a strike on
    /// aluminium moves RPM by some 3 %, which is 4 % of pitch; a prop that lost 1.5 % of its diameter misses 3 mm at each tip and
    /// one that lost 5 % is seen by anybody; roughness of 0.1 mm raises K_Q by some 4 %. Every cause weighs the same, for nobody
    /// has counted them; that no one cause fits weighs as much as one cause.
    /// </summary>
    public static IReadOnlyList<CausePrior> Weak { get; } =
    [
        new(Cause.None, 1, 1),
        new(Cause.PitchOrCupLoss, 1, 0.04),
        new(Cause.DiameterLoss, 1, 0.015),
        new(Cause.HubSlip, 1, 0.05),
        new(Cause.Ventilation, 1, 0.12),
        new(Cause.LighterLoad, 1, 0.06),
        new(Cause.EnginePower, 1, 0.05),
        new(Cause.HullOrLoad, 1, 0.12),
        new(Cause.BladeRoughness, 1, 0.04),
        new(Cause.Several, 1, 1),
    ];
}
