namespace FleetWake.Propulsion.Fastening;

/// <summary>
/// The torque that an engine's maker asks for on the prop nut, with its ends. It comes from the maker's manual for that
/// engine and from nowhere else: no figure is assumed here.
/// </summary>
public sealed record TorqueRange
{
    /// <summary>Takes a range; a single figure is a range whose ends are equal.</summary>
    /// <param name="low">The least torque, above zero.</param>
    /// <param name="high">The most, not below the least.</param>
    /// <exception cref="ArgumentOutOfRangeException">Zero, or the ends swapped.</exception>
    public TorqueRange(Torque low, Torque high)
    {
        if (!(low.NewtonMetres > 0))
            throw new ArgumentOutOfRangeException(nameof(low), low, "Must be above 0 N.m.");
        if (high.NewtonMetres < low.NewtonMetres)
            throw new ArgumentOutOfRangeException(nameof(high), high, $"Must not be below the low end, {low}.");

        (Low, High) = (low, high);
    }

    /// <summary>The least torque.</summary>
    public Torque Low { get; }

    /// <summary>The most.</summary>
    public Torque High { get; }

    /// <summary>The maker gave one figure, so that nothing says how far beyond it a slot may be sought.</summary>
    public bool IsSingleFigure => Low == High;
}
