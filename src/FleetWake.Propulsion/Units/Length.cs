using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// A length of a thing, such as a pitch or a diameter, held in metres. Valid from zero up; a negative length is
/// refused, because a prop has none and a difference of two pitches is a number, not a length. <c>default</c> is zero.
/// </summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the metres.</remarks>
public readonly record struct Length
{
    private readonly double _metres;

    private Length(double metres) => _metres = metres;

    /// <summary>The length [m].</summary>
    public double Metres => _metres;

    /// <summary>The length [in]; 1 in = 0.0254 m exactly (yard and pound agreement, 1959).</summary>
    public double Inches => _metres / ExactUnits.InchInMetres;

    /// <summary>The length [mm]; 1 mm = 0.001 m exactly (SI Brochure).</summary>
    public double Millimetres => _metres * ExactUnits.MillimetresPerMetre;

    /// <summary>Takes a length in metres.</summary>
    /// <param name="metres">The length [m], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Length FromMetres(double metres) => new(Reject.NotFiniteOrNegative(metres, metres));

    /// <summary>Takes a length in inches.</summary>
    /// <param name="inches">The length [in], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Length FromInches(double inches) =>
        new(Reject.NotFiniteOrNegative(inches, inches * ExactUnits.InchInMetres));

    /// <summary>Takes a length in millimetres.</summary>
    /// <param name="millimetres">The length [mm], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Length FromMillimetres(double millimetres) =>
        new(Reject.NotFiniteOrNegative(millimetres, millimetres / ExactUnits.MillimetresPerMetre));

    /// <summary>The length in millimetres to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Millimetres:0.###} mm");
}
