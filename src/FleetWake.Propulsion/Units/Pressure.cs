using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>An absolute air pressure, held in pascals. Valid from zero up. A station pressure, as a barometer at the dock shows it, is meant everywhere here: one reduced to sea level is another number in the mountains. <c>default</c> is zero.</summary>
/// <remarks>A conversion there and back is good to the last bit or two of a double; equality compares the Pa.</remarks>
public readonly record struct Pressure
{
    private readonly double _pascals;

    private Pressure(double pascals) => _pascals = pascals;

    /// <summary>The value [Pa].</summary>
    public double Pascals => _pascals;

    /// <summary>The value [hPa]; exact (SI prefix).</summary>
    public double Hectopascals => _pascals / ExactUnits.PascalsPerHectopascal;

    /// <summary>The value [kPa]; exact (SI prefix).</summary>
    public double Kilopascals => _pascals / ExactUnits.PascalsPerKilopascal;

    /// <summary>The value [inHg]; conventional inch of mercury at 0 deg C, 13 595.1 kg/m3 x 9.806 65 m/s2 x 0.0254 m (ISO 31-3:1992, from memory).</summary>
    public double InchesOfMercury => _pascals / ExactUnits.PascalsPerInchOfMercury;

    /// <summary>Takes a value in Pa.</summary>
    /// <param name="pascals">The value [Pa], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Pressure FromPascals(double pascals) => new(Reject.NotFiniteOrNegative(pascals, pascals));

    /// <summary>Takes a value in hPa.</summary>
    /// <param name="hectopascals">The value [hPa], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Pressure FromHectopascals(double hectopascals) =>
        new(Reject.NotFiniteOrNegative(hectopascals, hectopascals * ExactUnits.PascalsPerHectopascal));

    /// <summary>Takes a value in kPa.</summary>
    /// <param name="kilopascals">The value [kPa], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Pressure FromKilopascals(double kilopascals) =>
        new(Reject.NotFiniteOrNegative(kilopascals, kilopascals * ExactUnits.PascalsPerKilopascal));

    /// <summary>Takes a value in inHg.</summary>
    /// <param name="inchesOfMercury">The value [inHg], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static Pressure FromInchesOfMercury(double inchesOfMercury) =>
        new(Reject.NotFiniteOrNegative(inchesOfMercury, inchesOfMercury * ExactUnits.PascalsPerInchOfMercury));

    /// <summary>The value in hPa to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Hectopascals:0.###} hPa");
}
