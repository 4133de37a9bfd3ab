using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// A temperature of air or water, held in degrees Celsius as it is read. Valid above absolute zero. <c>default</c> is
/// 0 deg C.
/// </summary>
/// <remarks>Held in Celsius, so that a reading comes back to the bit; equality compares the degrees Celsius.</remarks>
public readonly record struct Temperature
{
    private readonly double _celsius;

    private Temperature(double celsius) => _celsius = celsius;

    /// <summary>The temperature [deg C], exactly as given.</summary>
    public double Celsius => _celsius;

    /// <summary>The temperature [K]; T = t + 273.15 exactly (SI Brochure).</summary>
    public double Kelvin => _celsius + ExactUnits.CelsiusZeroInKelvin;

    /// <summary>The temperature [deg F]; t_F = 9/5 t_C + 32 exactly.</summary>
    public double Fahrenheit => (_celsius * 9 / 5) + 32;

    /// <summary>Takes a temperature in degrees Celsius.</summary>
    /// <param name="celsius">The temperature [deg C], above -273.15, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">At or below absolute zero, or not finite.</exception>
    public static Temperature FromCelsius(double celsius) => new(AboveZero(celsius, celsius, nameof(celsius)));

    /// <summary>Takes a temperature in kelvin.</summary>
    /// <param name="kelvin">The temperature [K], above zero, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">At or below absolute zero, or not finite.</exception>
    public static Temperature FromKelvin(double kelvin) =>
        new(AboveZero(kelvin, kelvin - ExactUnits.CelsiusZeroInKelvin, nameof(kelvin)));

    /// <summary>Takes a temperature in degrees Fahrenheit.</summary>
    /// <param name="fahrenheit">The temperature [deg F], above -459.67, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">At or below absolute zero, or not finite.</exception>
    public static Temperature FromFahrenheit(double fahrenheit) =>
        new(AboveZero(fahrenheit, (fahrenheit - 32) * 5 / 9, nameof(fahrenheit)));

    /// <summary>The temperature in degrees Celsius to three decimals, for a log line; never for a record.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Celsius:0.###} deg C");

    private static double AboveZero(double given, double celsius, string name) =>
        celsius > -ExactUnits.CelsiusZeroInKelvin
            ? Reject.NotFinite(given, celsius, name)
            : throw new ArgumentOutOfRangeException(name, given, "Must be a finite number above absolute zero.");
}
