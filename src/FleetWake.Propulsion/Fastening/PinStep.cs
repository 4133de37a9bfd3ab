namespace FleetWake.Propulsion.Fastening;

/// <summary>What to do with a nut that was tightened to some torque. A reminder of common practice; the maker's manual goes first.</summary>
public enum PinStep
{
    /// <summary>The torque is below the range: tighten on.</summary>
    TightenToRange,

    /// <summary>In the range, and the pin fits: fit a new one.</summary>
    FitPin,

    /// <summary>In the range with the next slot ahead: turn on to it and watch the torque; it should stay in the range.</summary>
    TurnToNextSlot,

    /// <summary>
    /// In the range, but the next slot may lie above it, by an estimate of low confidence or because the maker gave one
    /// figure only: turn on to it with the wrench set to the range's top and, where that comes first, start again as for
    /// <see cref="StartAgain"/>. With one figure ask the manual; many say to turn on to the next slot.
    /// </summary>
    TurnWithCare,

    /// <summary>
    /// Above the range: take the nut off, look at washers and spacers, and start again. Backing off to a slot is never an
    /// answer.
    /// </summary>
    StartAgain,
}
