using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Ranges outside which a logged number is a broken field and no reading. Wide on purpose: what is merely odd is kept and
/// doubted later. Common practice, no source.
/// </summary>
internal static class Plausible
{
    internal static string? Rpm(double rpm) => Of(new(CsvQuantity.Rpm, "rev/min"), rpm);

    internal static string? Knots(double knots) => Of(new(CsvQuantity.Knots, "kn"), knots);

    internal static string? Course(double degrees) => Of(new(CsvQuantity.Heading, "degrees"), degrees);

    /// <summary>Why a number cannot be what its column holds, told as it was written and in the column's unit; null when it can.</summary>
    internal static string? Of(CsvColumn column, double written) => column.Quantity switch
    {
        CsvQuantity.Rpm => Within("RPM", column, written, 0, 20_000),
        CsvQuantity.Knots => Within("speed", column, written, 0, 200),
        CsvQuantity.Heading => Within("course", column, written, -360, 720),
        CsvQuantity.Celsius => Within("air temperature", column, written, -60, 60),
        CsvQuantity.Hectopascals => Within("air pressure", column, written, 500, 1100), // no lake is boated on at 500 hPa
        CsvQuantity.HumidityFraction => Within("relative humidity", column, written, 0, 1),
        _ => null,
    };

    /// <summary>The same for a run that somebody typed, which has turned, has one heading, and ended.</summary>
    internal static string? OfRun(CsvColumn column, double written) => column.Quantity switch
    {
        CsvQuantity.Rpm when written <= 0 => string.Create(
            CultureInfo.InvariantCulture, $"rpm {written}{(column.Factor == 1 ? "" : $" {column.Unit}")} of a run is not above zero"),
        CsvQuantity.Heading => Within("heading", column, written, 0, 360),
        CsvQuantity.HeldSeconds => Within("a run held for", column, written, 0, 86_400),
        _ => Of(column, written),
    };

    private static string? Within(string what, CsvColumn column, double written, double low, double high)
    {
        var value = column.Value(written);
        return value >= low && value <= high // false for what is no number
            ? null
            : string.Create(
                CultureInfo.InvariantCulture, $"{what} {written} is outside {column.Written(low):0.##} to {column.Written(high):0.##} {column.Unit}");
    }
}
