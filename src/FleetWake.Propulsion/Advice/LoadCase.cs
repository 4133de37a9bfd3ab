namespace FleetWake.Propulsion.Advice;

/// <summary>A use of the boat and what it does to RPM against the trial that the advice starts from: a load, a season.</summary>
/// <param name="Name">What people call it.</param>
/// <param name="LnRpm">ln of corrected RPM in this use over that of the trial, with its doubt [1]; within -0.5 to 0.5.</param>
public sealed record LoadCase(string Name, Uncertain LnRpm)
{
    /// <summary>
    /// dlnN/dln of displacement: -0.07 when resistance grows as Savitsky's method has it at a fixed centre of gravity, -0.19 when it
    /// grows as the weight (computed for invented boats); the middle, and the range as three standard deviations.
    /// </summary>
    public static readonly Uncertain RpmByDisplacement = new(-0.13, 0.04);

    /// <summary>The trial's own load.</summary>
    public static LoadCase Usual { get; } = new("usual", default);

    /// <summary>A load that differs from the trial's by a share of the displacement.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="share">Change of displacement as a fraction [1], -0.5 to 1: 0.1 is a tenth more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static LoadCase OfDisplacement(string name, double share)
    {
        if (share is not (>= -0.5 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, "A change of displacement must be from -0.5 to 1 of it.");
        var w = Math.Log(1 + share); // dlnW [1]
        return new LoadCase(name, new Uncertain(RpmByDisplacement.Value * w, RpmByDisplacement.StandardDeviation * Math.Abs(w)));
    }

    /// <summary>A use in air that is steadily unlike the reference: lnN = -g ln CF.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="lnFactor">ln of the usual CF there [1], within -0.3 to 0.3; above zero in the mountains.</param>
    /// <param name="gain">g [1].</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static LoadCase OfAir(string name, double lnFactor, Uncertain gain)
    {
        if (lnFactor is not (>= -0.3 and <= 0.3))
            throw new ArgumentOutOfRangeException(nameof(lnFactor), lnFactor, "Must be from -0.3 to 0.3.");
        return new LoadCase(name, new Uncertain(-gain.Value * lnFactor, gain.StandardDeviation * Math.Abs(lnFactor)));
    }
}
