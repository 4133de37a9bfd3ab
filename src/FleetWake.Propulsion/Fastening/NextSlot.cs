namespace FleetWake.Propulsion.Fastening;

/// <summary>Whether a nut may be turned on to its next slot. Never says to turn one back.</summary>
public static class NextSlot
{
    /// <summary>What to do with a nut that was tightened to some torque and stands somewhere between its slots.</summary>
    /// <param name="nut">The nut.</param>
    /// <param name="degreesPastSlot">How far it stands past the last place where the pin fitted [degrees], 0 to 360.</param>
    /// <param name="reached">The torque that it was tightened to.</param>
    /// <param name="range">The maker's range.</param>
    /// <param name="thread">The thread, for a guess of the torque at the next slot; null when not known.</param>
    /// <returns>
    /// Below the range and above it the slot has no say. In it, without a thread to guess from, care is asked for unless the
    /// pin fits.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The angle lies outside its range.</exception>
    public static PinStep Judge(
        CastleNut nut, double degreesPastSlot, Torque reached, TorqueRange range, PropShaftThread? thread)
    {
        ArgumentNullException.ThrowIfNull(nut);
        ArgumentNullException.ThrowIfNull(range);
        var turn = nut.DegreesToNextSlot(degreesPastSlot);
        if (reached.NewtonMetres < range.Low.NewtonMetres)
            return PinStep.TightenToRange;
        if (reached.NewtonMetres > range.High.NewtonMetres)
            return PinStep.StartAgain;
        if (turn == 0)
            return PinStep.FitPin;
        return thread?.TorqueAfter(reached, turn).High.NewtonMetres <= range.High.NewtonMetres
            ? PinStep.TurnToNextSlot
            : PinStep.TurnWithCare;
    }
}
