using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>A mass, held in kilograms. Valid from zero up. <c>default</c> is zero.</summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the kg.</remarks>
public readonly record struct Mass
{
    private readonly double _kilograms;

    private Mass(double kilograms) => _kilograms = kilograms;

    /// <summary>The value [kg].</summary>
    public double Kilograms => _kilograms;

    /// <summary>The value [lb]; exact (yard and pound agreement, 1959).</summary>
    public double Pounds => _kilograms / ExactUnits.KilogramsPerPound;

    /// <summary>Takes a value in kg.</summary>
    /// <param name="kilograms">The value [kg], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Mass FromKilograms(double kilograms) => new(Reject.NotFiniteOrNegative(kilograms, kilograms));

    /// <summary>Takes a value in lb.</summary>
    /// <param name="pounds">The value [lb], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Mass FromPounds(double pounds) =>
        new(Reject.NotFiniteOrNegative(pounds, pounds * ExactUnits.KilogramsPerPound));

    /// <summary>The value in kg to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kilograms:0.###} kg");
}
