using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Ranges outside which a logged number is a broken field and no reading. Wide on purpose: what is merely odd is kept and
/// doubted later. Common practice, no source.
/// </summary>
internal static class Plausible
{
    internal static string? Rpm(double rpm) => Within("RPM", rpm, 0, 20_000, "rev/min");

    internal static string? Knots(double knots) => Within("speed", knots, 0, 200, "kn");

    internal static string? Course(double degrees) => Within("course", degrees, -360, 720, "degrees");

    internal static string? Celsius(double celsius) => Within("air temperature", celsius, -60, 60, "deg C");

    /// <summary>Lowest about 500 hPa: no lake is boated on at such a height.</summary>
    internal static string? Hectopascals(double hPa) => Within("air pressure", hPa, 500, 1100, "hPa");

    internal static string? HumidityFraction(double fraction) => Within("relative humidity", fraction, 0, 1, "as a fraction");

    private static string? Within(string what, double value, double low, double high, string unit) =>
        value >= low && value <= high // false for what is no number
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{what} {value} is outside {low} to {high} {unit}");
}
