using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Logs;

/// <summary>Means of the air's readings over a log: a trial is short against how the weather changes.</summary>
internal sealed class AirMeans
{
    private Mean _celsius, _hectopascals, _humidity;

    /// <summary>Takes a temperature; returns why not when it cannot be one of the air.</summary>
    internal string? Celsius(double value) => Take(new(CsvQuantity.Celsius, "deg C"), value);

    internal string? Hectopascals(double value) => Take(new(CsvQuantity.Hectopascals, "hPa"), value);

    internal string? HumidityFraction(double value) => Take(new(CsvQuantity.HumidityFraction, "as a fraction"), value);

    /// <summary>Whether a quantity is one of the air's.</summary>
    internal static bool Has(CsvQuantity quantity) =>
        quantity is CsvQuantity.Celsius or CsvQuantity.Hectopascals or CsvQuantity.HumidityFraction;

    /// <summary>Takes a number as it was written; returns why not when it cannot be one of the air.</summary>
    internal string? Take(CsvColumn column, double written) => Plausible.Of(column, written) ?? column.Quantity switch
    {
        CsvQuantity.Celsius => _celsius.Take(column.Value(written)),
        CsvQuantity.Hectopascals => _hectopascals.Take(column.Value(written)),
        _ => _humidity.Take(column.Value(written)),
    };

    /// <summary>Whether anything was read of a quantity.</summary>
    internal bool Knows(CsvQuantity quantity) => quantity switch
    {
        CsvQuantity.Celsius => _celsius.Value,
        CsvQuantity.Hectopascals => _hectopascals.Value,
        _ => _humidity.Value,
    } is not null;

    /// <summary>Takes over what nothing is known of here.</summary>
    internal void Fill(AirMeans other)
    {
        if (_celsius.Value is null) _celsius = other._celsius;
        if (_hectopascals.Value is null) _hectopascals = other._hectopascals;
        if (_humidity.Value is null) _humidity = other._humidity;
    }

    internal AirState? State() => _celsius.Value is null && _hectopascals.Value is null && _humidity.Value is null
        ? null
        : new AirState(
            _celsius.Value is { } t ? Temperature.FromCelsius(t) : null,
            _hectopascals.Value is { } p ? Pressure.FromHectopascals(p) : null,
            _humidity.Value);

    private struct Mean
    {
        private double _sum;
        private int _count;

        internal readonly double? Value => _count == 0 ? null : _sum / _count;

        internal string? Take(double value)
        {
            _sum += value;
            _count++;
            return null;
        }
    }
}
