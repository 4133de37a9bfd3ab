using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>A mass per volume of air or water, held in kilograms per cubic metre. Valid from zero up. <c>default</c> is zero.</summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the kg/m3.</remarks>
public readonly record struct Density
{
    private readonly double _kilogramsPerCubicMetre;

    private Density(double kilogramsPerCubicMetre) => _kilogramsPerCubicMetre = kilogramsPerCubicMetre;

    /// <summary>The value [kg/m3].</summary>
    public double KilogramsPerCubicMetre => _kilogramsPerCubicMetre;

    /// <summary>Takes a value in kg/m3.</summary>
    /// <param name="kilogramsPerCubicMetre">The value [kg/m3], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Density FromKilogramsPerCubicMetre(double kilogramsPerCubicMetre) => new(Reject.NotFiniteOrNegative(kilogramsPerCubicMetre, kilogramsPerCubicMetre));

    /// <summary>The value in kg/m3 to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{KilogramsPerCubicMetre:0.###} kg/m3");
}
