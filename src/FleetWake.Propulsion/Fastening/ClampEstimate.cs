using System.Globalization;

namespace FleetWake.Propulsion.Fastening;

/// <summary>
/// A force that was guessed from torque or turn: a range that holds about two of three joints, of low confidence. It is to be
/// shown as an estimate and never to be aimed at.
/// </summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct ClampEstimate(Force Low, Force High)
{
    /// <summary>The estimate with what it is, for people.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Low.Newtons / 1000:0.0} to {High.Newtons / 1000:0.0} kN (an estimate of low confidence, not a setting)");
}
