using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// A speed along a heading, held in metres per second. Any finite value is valid; negative means astern along the
/// heading, as when a current sets a boat back. <c>default</c> is standing still.
/// </summary>
/// <remarks>
/// The unit constants are exact (see the source named there); a conversion there and back is good to the last bit or
/// two of a double. Equality compares the metres per second, so two speeds given in different units may be equal on
/// paper and differ in the last bit: keep the number as read beside its unit when it must come back unchanged.
/// </remarks>
public readonly record struct Speed
{
    private readonly double _metresPerSecond;

    private Speed(double metresPerSecond) => _metresPerSecond = metresPerSecond;

    /// <summary>The speed [m/s].</summary>
    public double MetresPerSecond => _metresPerSecond;

    /// <summary>The speed [kn]; 1 kn = 1852/3600 m/s exactly (SI Brochure, 8th edition 2006, table 8).</summary>
    public double Knots => _metresPerSecond / ExactUnits.KnotInMetresPerSecond;

    /// <summary>The speed [mph], statute; 1 mph = 0.44704 m/s exactly (yard and pound agreement, 1959).</summary>
    public double MilesPerHour => _metresPerSecond / ExactUnits.MilePerHourInMetresPerSecond;

    /// <summary>The speed [km/h]; 1 km/h = 1/3.6 m/s exactly.</summary>
    public double KilometresPerHour => _metresPerSecond / ExactUnits.KilometrePerHourInMetresPerSecond;

    /// <summary>Takes a speed in metres per second.</summary>
    /// <param name="metresPerSecond">The speed [m/s], any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static Speed FromMetresPerSecond(double metresPerSecond) =>
        new(Reject.NotFinite(metresPerSecond, metresPerSecond));

    /// <summary>Takes a speed in knots.</summary>
    /// <param name="knots">The speed [kn], any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static Speed FromKnots(double knots) =>
        new(Reject.NotFinite(knots, knots * ExactUnits.KnotInMetresPerSecond));

    /// <summary>Takes a speed in statute miles per hour.</summary>
    /// <param name="milesPerHour">The speed [mph], any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static Speed FromMilesPerHour(double milesPerHour) =>
        new(Reject.NotFinite(milesPerHour, milesPerHour * ExactUnits.MilePerHourInMetresPerSecond));

    /// <summary>Takes a speed in kilometres per hour.</summary>
    /// <param name="kilometresPerHour">The speed [km/h], any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static Speed FromKilometresPerHour(double kilometresPerHour) =>
        new(Reject.NotFinite(kilometresPerHour, kilometresPerHour * ExactUnits.KilometrePerHourInMetresPerSecond));

    /// <summary>The speed in knots to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Knots:0.###} kn");
}
